/**
 * The few functions where the time goes, over one memory that they share with arrays of ours: a small WebAssembly module,
 * written out byte by byte so that nothing needs fetching. All addresses, strides and sizes are in bytes.
 */
import { gateFunctions } from "./kernelGates";
import { productFor } from "./kernelProduct";
import { moduleOf } from "./wasm";

/** Outputs a multiple of 8, inputs at least 1. */
export type Block = (
  x: number,
  xStride: number,
  weights: number,
  bias: number,
  inputs: number,
  outputs: number,
  out: number,
  outStride: number,
) => void;

export interface Kernel {
  /** For so many positions. */
  readonly product1: Block;
  readonly product2: Block;
  readonly product4: Block;
  /**
   * One window of a recurrent unit; formulas in gru.ts. `a` and `b` are what its three gates get of the input and of the
   * state, one gate after another, each of `size` bytes like the state, which is written: a multiple of 16, at least 16.
   */
  readonly gates: (a: number, b: number, state: number, size: number) => void;
  /** A gentle slope below zero, cut off; in place. Size as above. */
  readonly rectify: (at: number, size: number) => void;
}

/** The kernel and its memory, or null where WebAssembly or its vectors may not be used (old devices, strict pages). */
export function compileKernel(bytes: number): { readonly kernel: Kernel; readonly memory: ArrayBuffer } | null {
  try {
    const functions = [...[1, 2, 4].map(productFor), ...gateFunctions];
    const { exports } = new WebAssembly.Instance(new WebAssembly.Module(moduleOf(functions, bytes)));
    return {
      kernel: exports as unknown as Kernel,
      memory: (exports.memory as WebAssembly.Memory).buffer as ArrayBuffer,
    };
  } catch {
    return null;
  }
}
