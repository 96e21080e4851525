/**
 * The one sum where the time goes: many dot products with the same weights. In WebAssembly, eight outputs by up to four
 * positions at a time; where a page may not compile WebAssembly, the same sum in plain JavaScript, some four times slower.
 */
import { compileKernel, type Kernel } from "./kernel";

/** Outputs come in groups of this many; layers are filled up with zeros. */
export const outputGroup = 8;

/** `weights` in groups of eight outputs: for each group, for each input, eight numbers. */
export interface Weights {
  readonly inputs: number;
  readonly outputs: number;
  readonly weights: Float32Array;
  readonly bias: Float32Array;
}

/** Memory for weights and rows, and the sum over it. One for each net: its arrays are those that `product` takes. */
export class Workshop {
  readonly #memory: ArrayBuffer;
  readonly #kernel: Kernel | null;
  /** Weights lie from the bottom up to here, rows and states from the top down to there. */
  #low = 0;
  #high: number;

  /**
   * @param bytes Room for everything that will be asked for.
   * @param plain True: plain JavaScript even where WebAssembly is to be had.
   */
  constructor(bytes: number, plain = false) {
    const compiled = plain ? null : compileKernel(bytes);
    this.#kernel = compiled?.kernel ?? null;
    this.#memory = compiled?.memory ?? new ArrayBuffer(roomFor(bytes / 4));
    this.#high = this.#memory.byteLength;
  }

  get isFast(): boolean {
    return this.#kernel !== null;
  }

  /** `length` zeros for rows and states. Asking for more than there is room for is our own mistake: RangeError. */
  floats(length: number): Float32Array {
    this.#high -= roomFor(length);
    if (this.#high < this.#low) throw new RangeError("the workshop is too small");
    return new Float32Array(this.#memory, this.#high, length);
  }

  /** A copy of all rows and states, to be put back with `restore`. */
  keep(): Uint8Array {
    return new Uint8Array(this.#memory, this.#high).slice();
  }
  restore(kept: Uint8Array): void {
    new Uint8Array(this.#memory, this.#high).set(kept);
  }

  /** @param given outputs × inputs, row after row. */
  weights(outputs: number, inputs: number, given: ArrayLike<number>, bias: ArrayLike<number> | null): Weights {
    const full = Math.ceil(outputs / outputGroup) * outputGroup;
    const room = { inputs, outputs: full, weights: this.#fixed(full * inputs), bias: this.#fixed(full) };
    fillWeights(room, outputs, given, bias);
    return room;
  }

  #fixed(length: number): Float32Array {
    const at = this.#low;
    this.#low += roomFor(length);
    if (this.#high < this.#low) throw new RangeError("the workshop is too small");
    return new Float32Array(this.#memory, at, length);
  }

  /** out[p·outputs + o] = bias[o] + Σ_k x[p·stride + k] · weight[o, k], for p in 0..positions−1. */
  product(x: Float32Array, stride: number, positions: number, w: Weights, out: Float32Array): void {
    for (let p = 0; p < positions; ) {
      const block = positions - p >= 4 ? 4 : positions - p >= 2 ? 2 : 1;
      if (this.#kernel === null) plainBlock(block, x, p * stride, stride, w, out, p * w.outputs);
      else {
        const from = x.byteOffset + 4 * p * stride;
        const to = out.byteOffset + 4 * p * w.outputs;
        const { inputs, outputs, weights, bias } = w;
        this.#kernel[block](from, 4 * stride, weights.byteOffset, bias.byteOffset, inputs, outputs, to, 4 * outputs);
      }
      p += block;
    }
  }
}

/** Writes other numbers where weights of the same shape lie. @param given outputs × inputs, row after row. */
export function fillWeights(
  { inputs, weights, bias: offsets }: Weights,
  outputs: number,
  given: ArrayLike<number>,
  bias: ArrayLike<number> | null,
): void {
  for (let o = 0; o < outputs; o++) {
    const group = (o - (o % outputGroup)) * inputs + (o % outputGroup);
    for (let k = 0; k < inputs; k++) weights[group + k * outputGroup] = given[o * inputs + k] as number;
  }
  if (bias !== null) offsets.set(bias);
}

/** Bytes for so many floats, in whole vectors. */
const roomFor = (floats: number) => Math.ceil(floats / 4) * 16;

function plainBlock(
  block: number,
  x: Float32Array,
  from: number,
  stride: number,
  { inputs, outputs, weights, bias }: Weights,
  out: Float32Array,
  to: number,
): void {
  for (let p = 0; p < block; p++) {
    const start = from + p * stride;
    for (let o = 0; o < outputs; o += 4) {
      let at = (o - (o % outputGroup)) * inputs + (o % outputGroup);
      let a = bias[o] as number;
      let b = bias[o + 1] as number;
      let c = bias[o + 2] as number;
      let d = bias[o + 3] as number;
      for (let k = start; k < start + inputs; k++) {
        const v = x[k] as number;
        a += v * (weights[at] as number);
        b += v * (weights[at + 1] as number);
        c += v * (weights[at + 2] as number);
        d += v * (weights[at + 3] as number);
        at += outputGroup;
      }
      const q = to + p * outputs + o;
      out[q] = a;
      out[q + 1] = b;
      out[q + 2] = c;
      out[q + 3] = d;
    }
  }
}
