/**
 * A gated recurrent unit that looks at the last `window` inputs, from a zero state, at every step. Instead of running
 * the window anew each time, one state is kept for each of the windows that are under way and all of them take the new
 * input together: the same sums, but the weights are read once for four windows.
 *
 *   r = σ(Wr x + br + Ur h + cr)   z = σ(Wz x + bz + Uz h + cz)   n = tanh(Wn x + bn + r·(Un h + cn))   h' = (1 − z)·n + z·h
 */
import type { Weights, Workshop } from "./product";

/** In a workshop, for each window: a state, and three gates from the input and from the state. */
export const floatsForEachUnit = 7;

export class GruLayer {
  readonly hidden: number;
  /** One state for each window: windows × hidden. */
  readonly states: Float32Array;
  readonly #input: Weights;
  readonly #recurrent: Weights;
  readonly #fromInput: Float32Array;
  readonly #fromState: Float32Array;
  readonly #shop: Workshop;
  readonly #windows: number;

  constructor(shop: Workshop, windows: number, input: Weights, recurrent: Weights) {
    this.#shop = shop;
    this.#windows = windows;
    this.#input = input;
    this.#recurrent = recurrent;
    this.hidden = recurrent.inputs;
    this.states = shop.floats(windows * this.hidden);
    this.#fromInput = shop.floats(windows * input.outputs);
    this.#fromState = shop.floats(windows * recurrent.outputs);
  }

  /** A window begins: its state is zero. */
  begin(window: number): void {
    this.states.fill(0, window * this.hidden, (window + 1) * this.hidden);
  }

  /** One input for all windows. */
  takeShared(x: Float32Array): void {
    this.#shop.product(x, 0, 1, this.#input, this.#fromInput);
    this.#advance(0);
  }

  /** Its own input for each window: windows × inputs. */
  takeEach(x: Float32Array): void {
    this.#shop.product(x, this.#input.inputs, this.#windows, this.#input, this.#fromInput);
    this.#advance(this.#input.outputs);
  }

  #advance(inputStride: number): void {
    const { hidden, states } = this;
    this.#shop.product(states, hidden, this.#windows, this.#recurrent, this.#fromState);
    this.#shop.gates(this.#fromInput, inputStride, this.#fromState, states, hidden);
  }
}
