import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { readWav } from "./wav";
import { writeWav } from "./writeWav";

const ramp = Float32Array.from({ length: 101 }, (_, n) => (n - 50) / 60);
const code = (bytes: Uint8Array) => {
  const read = readWav(bytes);
  return read.ok ? "ok" : read.code;
};
const changed = (bytes: Uint8Array, at: number, values: readonly number[]) => {
  const copy = bytes.slice();
  copy.set(values, at);
  return copy;
};

describe("reading a WAV file", () => {
  test.each([
    ["8 bit", { bits: 8 }, 1 / 256],
    ["16 bit", { bits: 16 }, 1 / 65_536],
    ["24 bit", { bits: 24 }, 1e-6],
    ["32 bit", { bits: 32 }, 1e-6],
    ["32 bit float", { bits: 32, float: true }, 1e-9],
    ["16 bit stereo", { bits: 16, channels: 2 }, 1 / 65_536],
  ] as const)("gives back what was written: %s", (_, shape, step) => {
    const read = readWav(writeWav(ramp, 44_100, shape));
    expect(read.ok && read.sound.rateHz).toBe(44_100);
    const error = read.ok ? Math.max(...read.sound.samples.map((v, n) => Math.abs(v - (ramp[n] ?? 9)))) : 9;
    expect(error).toBeLessThanOrEqual(step);
  });

  test("averages two channels", () => {
    const file = writeWav(Float32Array.of(0.5), 16_000, { bits: 16, channels: 2 });
    const read = readWav(changed(file, 46, [0, 0]));
    expect(read.ok && read.sound.samples[0]).toBeCloseTo(0.25, 4);
  });

  test("passes over parts it does not know", () => {
    const file = writeWav(ramp, 16_000);
    const note = Uint8Array.of(0x4c, 0x49, 0x53, 0x54, 3, 0, 0, 0, 1, 2, 3, 0);
    const withNote = Uint8Array.of(...file.subarray(0, 12), ...note, ...file.subarray(12));
    expect(code(withNote)).toBe("ok");
  });

  test("reads to the end of a file whose writer left the length open", () => {
    const file = writeWav(ramp, 16_000);
    const read = readWav(changed(file, 40, [255, 255, 255, 255]));
    expect(read.ok && read.sound.samples.length).toBe(101);
  });

  const good = writeWav(ramp, 16_000);
  test.each([
    ["an empty file", new Uint8Array(), "not-wav"],
    ["a text", new TextEncoder().encode("this is not sound at all"), "not-wav"],
    ["a file cut short", good.subarray(0, 100), "truncated"],
    ["a file cut inside its format", good.subarray(0, 30), "truncated"],
    ["a header alone", good.subarray(0, 12), "no-format"],
    ["no sound part", good.subarray(0, 36), "no-sound"],
    ["an empty sound part", writeWav(new Float32Array(), 16_000), "no-sound"],
    ["six channels", changed(good, 22, [6, 0]), "unsupported-format"],
    ["12 bits", changed(good, 34, [12, 0]), "unsupported-format"],
    ["A-law", changed(good, 20, [6, 0]), "unsupported-format"],
    ["4 kHz", changed(good, 24, [160, 15, 0, 0]), "unsupported-rate"],
    [
      "a float that is not a number",
      changed(writeWav(ramp, 16_000, { bits: 32, float: true }), 44, [0, 0, 192, 127]),
      "bad-sample",
    ],
  ])("says what is wrong with %s", (_, bytes, expected) => {
    expect(code(bytes)).toBe(expected);
  });

  property.prop([fc.uint8Array({ maxLength: 200 }), fc.nat(100)])("never throws, whatever the bytes", (bytes, keep) => {
    const hostile = Uint8Array.of(...good.subarray(0, keep), ...bytes);
    expect(typeof readWav(hostile).ok).toBe("boolean");
  });
});
