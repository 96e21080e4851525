/** Writes mono sound as a WAV file, for practice recordings and tests. The other half of `readWav`. */

export interface WavShape {
  readonly bits?: 8 | 16 | 24 | 32;
  readonly float?: boolean;
  /** With 2, both channels carry the same sound. */
  readonly channels?: 1 | 2;
}

/** @param samples Mono, −1..1; louder is cut off. Default 16 bit integers, one channel. */
export function writeWav(
  samples: Float32Array,
  rateHz: number,
  { bits = 16, float = false, channels = 1 }: WavShape = {},
): Uint8Array {
  const bytes = bits / 8;
  const length = samples.length * bytes * channels;
  const file = new Uint8Array(44 + length);
  const view = new DataView(file.buffer);
  file.set(new TextEncoder().encode("RIFF"), 0);
  view.setUint32(4, 36 + length, true);
  file.set(new TextEncoder().encode("WAVEfmt "), 8);
  view.setUint32(16, 16, true);
  view.setUint16(20, float ? 3 : 1, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, rateHz, true);
  view.setUint32(28, rateHz * bytes * channels, true);
  view.setUint16(32, bytes * channels, true);
  view.setUint16(34, bits, true);
  file.set(new TextEncoder().encode("data"), 36);
  view.setUint32(40, length, true);
  samples.forEach((sample, n) => {
    for (let c = 0; c < channels; c++) put(view, 44 + (n * channels + c) * bytes, sample, bits, float);
  });
  return file;
}

function put(view: DataView, at: number, sample: number, bits: number, float: boolean): void {
  const full = 2 ** (bits - 1);
  const v = Math.min(full - 1, Math.max(-full, Math.round(sample * full)));
  if (float) view.setFloat32(at, sample, true);
  else if (bits === 8) view.setUint8(at, v + 128);
  else if (bits === 16) view.setInt16(at, v, true);
  else if (bits === 32) view.setInt32(at, v, true);
  else {
    view.setUint16(at, v & 0xffff, true);
    view.setInt8(at + 2, v >> 16);
  }
}
