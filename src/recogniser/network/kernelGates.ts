/** The gates of a recurrent unit for one window, and the rectifier of the convolutions: four numbers at a time. */
import {
  add,
  type Bytes,
  constant,
  divide,
  get,
  larger,
  lesser,
  multiply,
  plus,
  set,
  step,
  storeVector,
  subtract,
  untilNone,
  vectorAt,
  type WasmFunction,
} from "./wasm";

/** Rectifier of the published net: a gentle slope below zero, cut off at −0.4. */
export const slope = 0.2;
export const least = -0.4;

/**
 * tanh x ≈ x · P(x²) / Q(x²) for |x| ≤ 8, held there beyond: fitted for the smallest largest difference (weighted least
 * squares, weights raised where it was largest). Never more than 5e-7 from tanh in float32, and never beyond ±1.
 */
const farthest = 8;
const above = [0.999999362, 0.129136393, 2.93882576e-3, 1.13102052e-5];
const below = [1, 0.462467381, 2.37638188e-2, 2.3702821e-4, 2.42383582e-7];

/** c₀ + c₁ s + c₂ s² … */
const polynomial = (coefficients: readonly number[], s: Bytes): Bytes =>
  coefficients.toReversed().flatMap((c, n) => (n === 0 ? constant(c) : [...s, ...multiply, ...constant(c), ...add]));

/** Of what lies on the stack; the two locals are overwritten. */
const tanh = (x: number, square: number): Bytes => [
  ...[...constant(farthest), ...lesser, ...constant(-farthest), ...larger, ...set(x)],
  ...[...get(x), ...get(x), ...multiply, ...set(square)],
  ...[...get(x), ...polynomial(above, get(square)), ...multiply],
  ...[...polynomial(below, get(square)), ...divide],
];
/** σ(x) = ½ + ½ tanh(½ x) */
const sigmoid = (x: number, square: number): Bytes => {
  const half = [...constant(0.5), ...multiply];
  return [...half, ...tanh(x, square), ...half, ...constant(0.5), ...add];
};

function gates(): WasmFunction {
  const [a, b, state, left, aUpdate, aNew, bUpdate, bNew] = [0, 1, 2, 3, 4, 5, 6, 7] as const;
  const [x, square, reset, update, fresh] = [8, 9, 10, 11, 12] as const;
  const further = (from: number, to: number) => [...get(from), ...get(left), ...plus, ...set(to)];
  const pointers = [a, aUpdate, aNew, b, bUpdate, bNew, state];
  return {
    name: "gates",
    parameters: 4,
    locals: [4, 5],
    body: [
      ...[...further(a, aUpdate), ...further(aUpdate, aNew), ...further(b, bUpdate), ...further(bUpdate, bNew)],
      ...untilNone(
        left,
        16,
        [...vectorAt(a, 0), ...vectorAt(b, 0), ...add, ...sigmoid(x, square), ...set(reset)],
        [...vectorAt(aUpdate, 0), ...vectorAt(bUpdate, 0), ...add, ...sigmoid(x, square), ...set(update)],
        [...vectorAt(aNew, 0), ...get(reset), ...vectorAt(bNew, 0), ...multiply, ...add],
        [...tanh(x, square), ...set(fresh)],
        [...get(state), ...get(fresh), ...get(update), ...vectorAt(state, 0), ...get(fresh), ...subtract],
        [...multiply, ...add, ...storeVector(0)],
        ...pointers.map((one) => step(one, 16)),
      ),
    ],
  };
}

function rectify(): WasmFunction {
  const [at, left, x] = [0, 1, 2] as const;
  return {
    name: "rectify",
    parameters: 2,
    locals: [0, 1],
    body: untilNone(
      left,
      16,
      [...vectorAt(at, 0), ...set(x)],
      [...get(at), ...get(x), ...get(x), ...constant(slope), ...multiply, ...constant(least), ...larger],
      [...larger, ...storeVector(0)],
      step(at, 16),
    ),
  };
}

export const gateFunctions: readonly WasmFunction[] = [gates(), rectify()];
