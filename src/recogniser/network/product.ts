/**
 * The one loop where the time goes: many short dot products, four outputs by two positions at a time. Doubles
 * throughout, so that no load needs converting and the sum does not depend on the engine.
 */

/** `weights` is outputs × inputs, row after row; `bias` one for each output. */
export interface Weights {
  readonly inputs: number;
  readonly outputs: number;
  readonly weights: Float64Array;
  readonly bias: Float64Array;
}

/**
 * out[p·outputs + o] = bias[o] + Σ_k x[p·stride + k] · weights[o·inputs + k], for p in 0..positions−1.
 * `outputs` must be a multiple of 4 (it is, for every layer we have; `weightsOf` refuses others).
 */
export function product(x: Float64Array, stride: number, positions: number, w: Weights, out: Float64Array): void {
  let p = 0;
  for (; p + 1 < positions; p += 2) twoPositions(x, p * stride, stride, w, out, p * w.outputs);
  if (p < positions) onePosition(x, p * stride, w, out, p * w.outputs);
}

function twoPositions(
  x: Float64Array,
  x0: number,
  stride: number,
  layer: Weights,
  out: Float64Array,
  at: number,
): void {
  const { inputs, outputs, weights, bias } = layer;
  const x1 = x0 + stride;
  for (let o = 0; o < outputs; o += 4) {
    const w0 = o * inputs;
    const w1 = w0 + inputs;
    const w2 = w1 + inputs;
    const w3 = w2 + inputs;
    let a0 = 0;
    let a1 = 0;
    let a2 = 0;
    let a3 = 0;
    let b0 = 0;
    let b1 = 0;
    let b2 = 0;
    let b3 = 0;
    for (let k = 0; k < inputs; k++) {
      const a = x[x0 + k] as number;
      const b = x[x1 + k] as number;
      const u = weights[w0 + k] as number;
      a0 += a * u;
      b0 += b * u;
      const v = weights[w1 + k] as number;
      a1 += a * v;
      b1 += b * v;
      const y = weights[w2 + k] as number;
      a2 += a * y;
      b2 += b * y;
      const z = weights[w3 + k] as number;
      a3 += a * z;
      b3 += b * z;
    }
    const q = at + o;
    const r = q + outputs;
    out[q] = a0 + (bias[o] as number);
    out[q + 1] = a1 + (bias[o + 1] as number);
    out[q + 2] = a2 + (bias[o + 2] as number);
    out[q + 3] = a3 + (bias[o + 3] as number);
    out[r] = b0 + (bias[o] as number);
    out[r + 1] = b1 + (bias[o + 1] as number);
    out[r + 2] = b2 + (bias[o + 2] as number);
    out[r + 3] = b3 + (bias[o + 3] as number);
  }
}

function onePosition(x: Float64Array, x0: number, layer: Weights, out: Float64Array, at: number): void {
  const { inputs, outputs, weights, bias } = layer;
  for (let o = 0; o < outputs; o += 4) {
    const w0 = o * inputs;
    const w1 = w0 + inputs;
    const w2 = w1 + inputs;
    const w3 = w2 + inputs;
    let a0 = 0;
    let a1 = 0;
    let a2 = 0;
    let a3 = 0;
    for (let k = 0; k < inputs; k++) {
      const a = x[x0 + k] as number;
      a0 += a * (weights[w0 + k] as number);
      a1 += a * (weights[w1 + k] as number);
      a2 += a * (weights[w2 + k] as number);
      a3 += a * (weights[w3 + k] as number);
    }
    out[at + o] = a0 + (bias[o] as number);
    out[at + o + 1] = a1 + (bias[o + 1] as number);
    out[at + o + 2] = a2 + (bias[o + 2] as number);
    out[at + o + 3] = a3 + (bias[o + 3] as number);
  }
}
