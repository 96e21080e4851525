/**
 * Real people talking, in five languages, and music: the speakers and pieces that audio/make/held-out.json sets aside, as
 * Debian's packages bring them. Decoded once into out/bench, 16 kHz. What is not installed is named.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync } from "node:fs";
import { dirname, join } from "node:path";
import { readWav } from "../../../src/recogniser";

interface Source {
  readonly name: string;
  readonly debian: string;
  readonly folder: string;
  readonly files: RegExp;
  /** What ffmpeg is told about them. */
  readonly format: readonly string[];
}

const sounds = "/usr/share/asterisk/sounds";
const raw16k = ["-f", "s16le", "-ar", "16000", "-ac", "1"];
const people: readonly Source[] = [
  {
    name: "Italian man",
    debian: "asterisk-core-sounds-it-g722",
    folder: `${sounds}/it_IT_m_Carlo`,
    files: /\.g722$/,
    format: ["-f", "g722"],
  },
  {
    name: "Russian woman",
    debian: "asterisk-core-sounds-ru-g722",
    folder: `${sounds}/ru_RU_f_IvrvoiceRU`,
    files: /\.g722$/,
    format: ["-f", "g722"],
  },
  {
    name: "Spanish (Colombia)",
    debian: "asterisk-prompt-es-co",
    folder: `${sounds}/es`,
    files: /\.gsm$/,
    format: ["-f", "gsm"],
  },
  {
    name: "French woman",
    debian: "asterisk-prompt-fr-armelle",
    folder: `${sounds}/fr`,
    files: /\.gsm$/,
    format: ["-f", "gsm"],
  },
  {
    name: "English, several",
    debian: "pocketsphinx-testdata",
    folder: "/usr/share/pocketsphinx/test/data",
    files: /\.(wav|raw)$/,
    format: raw16k,
  },
];
const music: readonly Source[] = ["manolo", "reno"].map((name) => ({
  name,
  debian: "asterisk-moh-opsound-wav",
  folder: "/usr/share/asterisk/moh",
  files: new RegExp(`^${name}.*\\.wav$`),
  format: [],
}));

export interface Recorded {
  readonly name: string;
  /** 16 kHz, at most five seconds each, none of them silent. */
  readonly pieces: readonly Float32Array[];
}
export interface Found {
  readonly found: readonly Recorded[];
  readonly missing: readonly string[];
}

export const testPeople = (): Found => read(people);
export const testMusic = (): Found => read(music);

function read(sources: readonly Source[]): Found {
  const there = sources.map((source) => ({ source, files: filesOf(source) }));
  return {
    found: there.flatMap(({ source, files }) =>
      files.length === 0 ? [] : [{ name: source.name, pieces: piecesOf(decoded(source, files)) }],
    ),
    missing: there
      .filter(({ files }) => files.length === 0)
      .map(({ source: { name, debian } }) => `${name} (apt-get install ${debian})`),
  };
}

function filesOf({ folder, files }: Source): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => files.test(name) && !name.includes("silence/"))
    .map((name) => join(folder, name))
    .sort();
}

/** All files of a source one after another. */
function decoded({ name, format }: Source, files: readonly string[]): Float32Array {
  const path = join("out", "bench", "recorded", `${name.replace(/[^a-z]+/gi, "-")}.wav`);
  if (!existsSync(path)) {
    mkdirSync(dirname(path), { recursive: true });
    // WAV files have headers of their own: only headerless formats may be joined as they are.
    const bodies = files.map((file) => bodyOf(file));
    const args = format.length > 0 ? [...format, "-i", "pipe:0"] : ["-i", files[0] ?? ""];
    const beside = `${path}.${process.pid}.wav`;
    execFileSync("ffmpeg", ["-v", "error", ...args, "-ar", "16000", "-ac", "1", "-c:a", "pcm_s16le", beside], {
      ...(format.length > 0 && { input: Buffer.concat(bodies) }),
      maxBuffer: 2 ** 30,
    });
    renameSync(beside, path);
  }
  const result = readWav(new Uint8Array(readFileSync(path)));
  if (!result.ok) throw new Error(`${path}: ${result.message}`);
  return result.sound.samples;
}

/** PocketSphinx's test recordings are WAV or raw, all 16 kHz and 16 bit: without the header of 44 bytes they can be joined. */
function bodyOf(file: string): Buffer {
  const bytes = readFileSync(file);
  return bytes.subarray(0, 4).toString("latin1") === "RIFF" ? bytes.subarray(44) : bytes;
}

const pieceSamples = 5 * 16_000;
function piecesOf(sound: Float32Array): readonly Float32Array[] {
  const count = Math.floor(sound.length / pieceSamples);
  return Array.from({ length: count }, (_, n) => sound.subarray(n * pieceSamples, (n + 1) * pieceSamples)).filter(
    (piece) => piece.some((x) => Math.abs(x) > 0.045),
  );
}
