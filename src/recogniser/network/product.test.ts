import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { Workshop } from "./product";

const anyShape = fc.record({
  inputs: fc.integer({ min: 1, max: 40 }),
  outputs: fc.integer({ min: 1, max: 30 }),
  positions: fc.integer({ min: 1, max: 11 }),
  stride: fc.integer({ min: 0, max: 50 }),
  seed: fc.nat(),
});
/** A small generator of numbers from −1 to 1 (linear congruential, from memory). */
const numbers = (seed: number, length: number) => {
  let state = seed >>> 0;
  return Float32Array.from({ length }, () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 31 - 1;
  });
};
const dot = (a: Float32Array, i: number, b: Float32Array, j: number, n: number) =>
  Array.from({ length: n }, (_, k) => (a[i + k] ?? Number.NaN) * (b[j + k] ?? Number.NaN)).reduce((s, v) => s + v, 0);

describe.each([
  ["in WebAssembly", false],
  ["in plain JavaScript", true],
])("the sum of products %s", (_, plain) => {
  property.prop([anyShape], { numRuns: 200 })("is the sum of products, for any shape", (shape) => {
    const { inputs, outputs, positions, stride, seed } = shape;
    const shop = new Workshop(100_000, plain);
    const rows = numbers(seed, outputs * inputs);
    const bias = numbers(seed + 1, outputs);
    const w = shop.weights(outputs, inputs, rows, bias);
    const x = shop.floats(stride * (positions - 1) + inputs);
    x.set(numbers(seed + 2, x.length));
    const out = shop.floats(positions * w.outputs);
    const after = shop.floats(8);
    shop.product(x, stride, positions, w, out);
    const errors = Array.from({ length: positions * outputs }, (_, i) => {
      const [p, o] = [Math.floor(i / outputs), i % outputs];
      return Math.abs(
        (out[p * w.outputs + o] ?? Number.NaN) - (bias[o] ?? 0) - dot(x, p * stride, rows, o * inputs, inputs),
      );
    });
    expect(Math.max(...errors)).toBeLessThan(1e-5);
    expect([...after]).toEqual(Array(8).fill(0));
  });

  test("refuses more memory than there is", () => {
    expect(() => new Workshop(65_536, plain).floats(20_000)).toThrow(RangeError);
  });
});

test("WebAssembly is used where it may be", () => {
  expect(new Workshop(1000).isFast).toBe(true);
});
