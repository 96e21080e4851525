/**
 * The memory of a net and the sums over it where the time goes, above all many dot products with the same weights. In
 * WebAssembly; where a page may not compile that, in plain JavaScript.
 */
import { compileKernel, type Kernel } from "./kernel";
import { outputGroup } from "./kernelProduct";
import { plainKernel } from "./plainKernel";

/** `weights` in groups of eight outputs: for each group, for each input, eight numbers. */
export interface Weights {
  readonly inputs: number;
  readonly outputs: number;
  readonly weights: Float32Array;
  readonly bias: Float32Array;
}

/** Memory for weights and rows, and the sums over it. One for each net: only its own arrays may be given to them. */
export class Workshop {
  readonly #memory: ArrayBuffer;
  readonly #kernel: Kernel;
  /** Whether its sums run in WebAssembly. */
  readonly isFast: boolean;
  /** Weights lie from the bottom up to here, rows and states from the top down to there. */
  #low = 0;
  #high: number;

  /**
   * @param bytes Room for everything that will be asked for.
   * @param plain True: plain JavaScript even where WebAssembly is to be had.
   */
  constructor(bytes: number, plain = false) {
    const compiled = plain ? null : compileKernel(bytes);
    this.isFast = compiled !== null;
    this.#memory = compiled?.memory ?? new ArrayBuffer(roomFor(bytes / 4));
    this.#kernel = compiled?.kernel ?? plainKernel(this.#memory);
    this.#high = this.#memory.byteLength;
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
    const { product1, product2, product4 } = this.#kernel;
    const { inputs, outputs, weights, bias } = w;
    for (let p = 0; p < positions; ) {
      const [block, sum] = positions - p >= 4 ? [4, product4] : positions - p >= 2 ? [2, product2] : [1, product1];
      const from = x.byteOffset + 4 * p * stride;
      const to = out.byteOffset + 4 * p * outputs;
      sum(from, 4 * stride, weights.byteOffset, bias.byteOffset, inputs, outputs, to, 4 * outputs);
      p += block;
    }
  }

  /**
   * The states of a recurrent unit's windows move on; formulas in gru.ts.
   * @param fromInput  What its three gates get of the input, 3 · hidden for a window, `stride` from one window to the next.
   * @param fromState  What they get of the state: windows × 3 · hidden.
   * @param states     Written: windows × hidden; hidden a multiple of 4.
   */
  gates(fromInput: Float32Array, stride: number, fromState: Float32Array, states: Float32Array, hidden: number): void {
    const size = 4 * hidden;
    for (let w = 0; w * hidden < states.length; w++) {
      const [a, b] = [fromInput.byteOffset + 4 * w * stride, fromState.byteOffset + 3 * w * size];
      this.#kernel.gates(a, b, states.byteOffset + w * size, size);
    }
  }

  /** A gentle slope below zero, cut off at −0.4; in place. @param row of a length that is a multiple of 4. */
  rectify(row: Float32Array): void {
    this.#kernel.rectify(row.byteOffset, row.byteLength);
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
