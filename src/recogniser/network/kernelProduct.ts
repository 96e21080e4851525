/** Many dot products with the same weights, eight outputs at a time for 1, 2 or 4 positions: the sum of `Workshop.product`. */
import {
  add,
  type Bytes,
  get,
  multiply,
  plus,
  set,
  splatAt,
  step,
  storeVector,
  untilNone,
  vectorAt,
  type WasmFunction,
} from "./wasm";

/** Outputs come in groups of this many; layers are filled up with zeros. */
export const outputGroup = 8;

/** The eight parameters, then the locals. */
const [x, xStride, weights, bias, inputs, outputs, out, outStride, left, row] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] as const;

export function productFor(positions: number): WasmFunction {
  const all = Array.from({ length: positions }, (_, p) => p);
  const pointer = (p: number) => 10 + p;
  const [low, high, splat] = [0, 1, 2].map((n) => 10 + positions + n) as [number, number, number];
  const sum = (p: number, half: number) => 13 + positions + 2 * p + half;
  const accumulate = (p: number, half: number, weight: number): Bytes =>
    [get(sum(p, half)), get(splat), get(weight), multiply, add, set(sum(p, half))].flat();

  const begin = all.flatMap((p) => [
    ...[...vectorAt(bias, 0), ...set(sum(p, 0)), ...vectorAt(bias, 16), ...set(sum(p, 1))],
    ...(p === 0 ? get(x) : [...get(pointer(p - 1)), ...get(xStride), ...plus]),
    ...set(pointer(p)),
  ]);
  const oneInput = all.flatMap((p) => [
    ...[...splatAt(pointer(p)), ...set(splat)],
    ...[...accumulate(p, 0, low), ...accumulate(p, 1, high)],
    ...step(pointer(p), 4),
  ]);
  const bothWeights = [...vectorAt(weights, 0), ...set(low), ...vectorAt(weights, 16), ...set(high)];
  const allInputs = [...get(inputs), ...set(left), ...untilNone(left, 1, bothWeights, oneInput, step(weights, 32))];
  const finish = all.flatMap((p) => [
    ...(p === 0 ? get(out) : [...get(row), ...get(outStride), ...plus]),
    ...set(row),
    ...[...get(row), ...get(sum(p, 0)), ...storeVector(0)],
    ...[...get(row), ...get(sum(p, 1)), ...storeVector(16)],
  ]);
  return {
    name: `product${positions}`,
    parameters: 8,
    locals: [2 + positions, 3 + 2 * positions],
    body: untilNone(outputs, outputGroup, begin, allInputs, finish, step(bias, 32), step(out, 32)),
  };
}
