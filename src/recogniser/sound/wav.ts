/**
 * Reads a WAV file (RIFF/WAVE): 8, 16, 24 or 32 bit integers or 32 bit floats, one or two channels, 8–96 kHz. Files come
 * from anywhere and are treated as hostile: whatever is wrong gives a code and a sentence, never a stray exception.
 * @see "Multimedia Programming Interface and Data Specifications 1.0" (IBM and Microsoft, 1991); RFC 2361
 */
import { highestRateHz, lowestRateHz } from "./resample";

/** `samples` are mono (two channels averaged), −1..1, at `rateHz`. */
export interface Sound {
  readonly rateHz: number;
  readonly samples: Float32Array;
}

export type WavErrorCode =
  | "not-wav"
  | "truncated"
  | "no-format"
  | "unsupported-format"
  | "unsupported-rate"
  | "no-sound"
  | "bad-sample";
export type WavResult =
  | { readonly ok: true; readonly sound: Sound }
  | { readonly ok: false; readonly code: WavErrorCode; readonly message: string };

const refuse = (code: WavErrorCode, message: string): WavResult => ({ ok: false, code, message });

interface Format {
  readonly kind: "int" | "float";
  readonly channels: number;
  readonly rateHz: number;
  readonly bytes: number;
}

const pcm = 1;
const ieeeFloat = 3;
const extensible = 0xfffe;
/** Written by programs that stream and never come back to fill in the length. */
const openEnded = 0xffffffff;

export function readWav(file: Uint8Array): WavResult {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const tag = (at: number) => String.fromCharCode(...file.subarray(at, at + 4));
  if (file.length < 12 || tag(0) !== "RIFF" || tag(8) !== "WAVE") return refuse("not-wav", "this is not a WAV file");
  let format: Format | null = null;
  for (let at = 12; at + 8 <= file.length; ) {
    const name = tag(at);
    const declared = view.getUint32(at + 4, true);
    const body = at + 8;
    const present = file.length - body;
    if (name === "data") {
      if (format === null) return refuse("no-format", "the WAV file has sound before its format");
      const length = declared === openEnded || (declared === 0 && present > 0) ? present : declared;
      if (length > present) {
        return refuse("truncated", `the WAV file says ${length} bytes of sound but holds ${present}`);
      }
      return samplesOf(view, body, length, format);
    }
    if (declared > present) return refuse("truncated", `the WAV file ends inside its "${printable(name)}" part`);
    if (name === "fmt ") {
      const read = formatOf(view, body, declared);
      if ("code" in read) return read;
      format = read;
    }
    at = body + declared + (declared & 1);
  }
  return format === null
    ? refuse("no-format", "the WAV file has no format")
    : refuse("no-sound", "the WAV file holds no sound");
}

const printable = (name: string) => name.replace(/[^ -~]/g, "?");

function formatOf(view: DataView, at: number, length: number): Format | (WavResult & { ok: false }) {
  const unsupported = (what: string) => refuse("unsupported-format", what) as WavResult & { ok: false };
  if (length < 16) return unsupported("the WAV file's format is too short to read");
  let code = view.getUint16(at, true);
  const channels = view.getUint16(at + 2, true);
  const rateHz = view.getUint32(at + 4, true);
  const bits = view.getUint16(at + 14, true);
  if (code === extensible && length >= 40) code = view.getUint16(at + 24, true);
  if (channels !== 1 && channels !== 2) return unsupported(`${channels} channels: only one or two can be read`);
  const isInt = code === pcm && [8, 16, 24, 32].includes(bits);
  const isFloat = code === ieeeFloat && bits === 32;
  if (!isInt && !isFloat) {
    return unsupported(
      `format ${code} with ${bits} bits: only 8, 16, 24 or 32 bit integers or 32 bit floats can be read`,
    );
  }
  if (rateHz < lowestRateHz || rateHz > highestRateHz) {
    return refuse(
      "unsupported-rate",
      `${rateHz} Hz: only ${lowestRateHz} to ${highestRateHz} Hz can be read`,
    ) as WavResult & { ok: false };
  }
  return { kind: isFloat ? "float" : "int", channels, rateHz, bytes: bits / 8 };
}

function samplesOf(view: DataView, at: number, length: number, format: Format): WavResult {
  const { channels, bytes, rateHz } = format;
  const count = Math.floor(length / (bytes * channels));
  if (count === 0) return refuse("no-sound", "the WAV file holds no sound");
  const read = readerOf(view, format);
  const samples = new Float32Array(count);
  for (let n = 0; n < count; n++) {
    let sum = 0;
    for (let c = 0; c < channels; c++) sum += read(at + (n * channels + c) * bytes);
    if (!Number.isFinite(sum)) return refuse("bad-sample", `sample ${n} is not a number`);
    samples[n] = Math.min(1, Math.max(-1, sum / channels));
  }
  return { ok: true, sound: { rateHz, samples } };
}

function readerOf(view: DataView, { kind, bytes }: Format): (at: number) => number {
  if (kind === "float") return (at) => view.getFloat32(at, true);
  if (bytes === 1) return (at) => (view.getUint8(at) - 128) / 128;
  if (bytes === 2) return (at) => view.getInt16(at, true) / 32_768;
  if (bytes === 3) return (at) => ((view.getInt8(at + 2) << 16) | view.getUint16(at, true)) / 8_388_608;
  return (at) => view.getInt32(at, true) / 2_147_483_648;
}
