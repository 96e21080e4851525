import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { fromHalf, widened } from "./half";

const all = Uint16Array.from({ length: 65_536 }, (_, n) => n);

test.each([
  ["zero", 0x0000, 0],
  ["minus zero", 0x8000, -0],
  ["one", 0x3c00, 1],
  ["minus two", 0xc000, -2],
  ["the least above one", 0x3c01, 1 + 2 ** -10],
  ["the half nearest to a third", 0x3555, 1365 / 4096],
  ["the largest, 2^15 · (2 − 2^−10)", 0x7bff, 65_504],
  ["the least that is normal, 2^−14", 0x0400, 2 ** -14],
  ["the largest subnormal", 0x03ff, 2 ** -14 - 2 ** -24],
  ["the least subnormal, 2^−24", 0x0001, 2 ** -24],
  ["infinity", 0x7c00, Number.POSITIVE_INFINITY],
  ["minus infinity", 0xfc00, Number.NEGATIVE_INFINITY],
  ["a quiet NaN", 0x7e00, Number.NaN],
  // The encoding of IEEE 754-2019 §3.4 with the parameters of its Table 3.5 for binary16: p = 11, emax = 15.
])("%s is read as IEEE 754 means it", (_, half, value) => {
  expect(fromHalf(half)).toBe(value);
});

/** A float32 of the same sign and fraction, its exponent off by the difference of the two biases: 2^(127 − 15). */
function byItsBits(half: number): number {
  const view = new DataView(new ArrayBuffer(4));
  view.setUint32(0, ((half & 0x8000) << 16) | ((half & 0x7fff) << 13));
  const value = view.getFloat32(0) * 2 ** 112;
  const isNumber = Math.abs(value) < 2 ** 16;
  return isNumber ? value : (half & 1023) === 0 ? value * Number.POSITIVE_INFINITY : Number.NaN;
}

test("every half is the number that its bits are in a float32", () => {
  expect(Array.from(widened(all))).toEqual(Array.from(all, byItsBits));
});

/**
 * What another implementation makes of all of them, NaNs as one NaN. numpy 2.4.6:
 *   x = np.arange(65536, dtype="<u2").view("<f2").astype("<f4"); x[np.isnan(x)] = np.frombuffer(b"\0\0\xc0\x7f", "<f4")[0]
 *   hashlib.sha256(x.tobytes()).hexdigest()
 */
test("every half is what numpy makes of it, to the last bit", () => {
  const view = new DataView(new ArrayBuffer(4 * all.length));
  for (const [n, x] of widened(all).entries()) {
    if (Number.isNaN(x)) view.setUint32(4 * n, 0x7fc00000, true);
    else view.setFloat32(4 * n, x, true);
  }
  const digest = createHash("sha256").update(new Uint8Array(view.buffer)).digest("hex");
  expect(digest).toBe("385ff5fe69182797cda5f1827e20cf423f4416bc9246f27d0eec27cac9039259");
});
