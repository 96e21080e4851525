/** Mono 16-bit WAV, in and out. Samples are -1..1. */
import { readFileSync, writeFileSync } from "node:fs";

export interface Sound {
  readonly rateHz: number;
  readonly samples: Float32Array;
}

const headerBytes = 44;

/** Reads the first channel; other encodings than 16-bit PCM throw. */
export function readWav(path: string): Sound {
  const bytes = readFileSync(path);
  let at = 12;
  let format = { code: 0, channels: 1, rateHz: 0, bits: 0 };
  while (at + 8 <= bytes.length) {
    const name = bytes.toString("latin1", at, at + 4);
    const size = bytes.readUInt32LE(at + 4);
    const body = at + 8;
    if (name === "fmt ") {
      format = {
        code: bytes.readUInt16LE(body),
        channels: bytes.readUInt16LE(body + 2),
        rateHz: bytes.readUInt32LE(body + 4),
        bits: bytes.readUInt16LE(body + 14),
      };
    }
    if (name === "data") {
      if (format.code !== 1 || format.bits !== 16) throw new Error(`${path}: not 16-bit PCM`);
      const frameBytes = 2 * format.channels;
      const end = Math.min(bytes.length, body + size);
      const samples = Float32Array.from(
        { length: Math.floor((end - body) / frameBytes) },
        (_, frame) => bytes.readInt16LE(body + frame * frameBytes) / 32_768,
      );
      return { rateHz: format.rateHz, samples };
    }
    at = body + size + (size % 2);
  }
  throw new Error(`${path}: no sound in it`);
}

export function writeWav(path: string, { rateHz, samples }: Sound): void {
  const bytes = Buffer.alloc(headerBytes + samples.length * 2);
  bytes.write("RIFF", 0, "latin1");
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write("WAVEfmt ", 8, "latin1");
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rateHz, 24);
  bytes.writeUInt32LE(rateHz * 2, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write("data", 36, "latin1");
  bytes.writeUInt32LE(samples.length * 2, 40);
  samples.forEach((sample, place) => {
    bytes.writeInt16LE(Math.round(Math.max(-1, Math.min(1, sample)) * 32_767), headerBytes + place * 2);
  });
  writeFileSync(path, bytes);
}
