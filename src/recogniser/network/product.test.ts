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

/** The largest difference over three windows of a unit of 24, from sums and states that `of` gives. */
function furthestGate(plain: boolean, of: (n: number) => number): number {
  const shop = new Workshop(100_000, plain);
  const [windows, hidden] = [3, 24];
  const [a, b] = [shop.floats(windows * 3 * hidden), shop.floats(windows * 3 * hidden)];
  const states = shop.floats(windows * hidden);
  for (let n = 0; n < a.length; n++) [a[n], b[n]] = [of(n), of(n + 1000)];
  for (let n = 0; n < states.length; n++) states[n] = Math.tanh(of(n + 2000));
  const [sum, sigmoid] = [(n: number) => (a[n] ?? 0) + (b[n] ?? 0), (x: number) => 1 / (1 + Math.exp(-x))];
  const wanted = Array.from(states, (h, n) => {
    const reset = Math.floor(n / hidden) * 3 * hidden + (n % hidden);
    const z = sigmoid(sum(reset + hidden));
    const fresh = Math.tanh((a[reset + 2 * hidden] ?? 0) + sigmoid(sum(reset)) * (b[reset + 2 * hidden] ?? 0));
    return (1 - z) * fresh + z * h;
  });
  shop.gates(a, 3 * hidden, b, states, hidden);
  return Math.max(...wanted.map((x, n) => Math.abs(x - (states[n] ?? Number.NaN))));
}

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

  test("a recurrent unit's gates are within a millionth of what its formulas give", () => {
    expect(furthestGate(plain, (n) => 3 * (numbers(n, 1)[0] ?? 0))).toBeLessThan(1e-6);
    expect(furthestGate(plain, (n) => 30 * (numbers(n, 1)[0] ?? 0))).toBeLessThan(1e-6);
  });

  test("tanh is within half a millionth, and never beyond 1", () => {
    const shop = new Workshop(4_000_000, plain);
    const hidden = 80_000;
    const asked = shop.floats(3 * hidden).fill(-30, hidden, 2 * hidden);
    for (let k = 0; k < hidden; k++) asked[2 * hidden + k] = (k - hidden / 2) / 4000;
    const states = shop.floats(hidden);
    shop.gates(asked, 0, shop.floats(3 * hidden), states, hidden);
    const errors = states.map((state, k) => Math.abs(state - Math.tanh(asked[2 * hidden + k] as number)));
    expect(Math.max(...errors)).toBeLessThan(6e-7);
    expect(Math.max(...states.map(Math.abs))).toBeLessThanOrEqual(1);
    expect(states.at(-1)).toBeCloseTo(1, 6);
  });

  test("the rectifier leaves what is above zero, and flattens what is below, down to its floor", () => {
    const shop = new Workshop(1000, plain);
    const row = shop.floats(8);
    row.set([0, 1.5, -0.5, -1.75, -2, -3, 1e9, -1e9]);
    shop.rectify(row);
    const flattened = [0, 1.5, -0.1, -0.35, -0.4, -0.4, 1e9, -0.4];
    expect(Math.max(...row.map((x, k) => Math.abs(x - (flattened[k] as number))))).toBeLessThan(1e-7);
  });

  test("refuses more memory than there is", () => {
    expect(() => new Workshop(65_536, plain).floats(20_000)).toThrow(RangeError);
  });
});

test("WebAssembly is used where it may be", () => {
  expect(new Workshop(1000).isFast).toBe(true);
});
