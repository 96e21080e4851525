/**
 * The probabilities of a head for one summary, and how they move with it. As in the network:
 * P(a, c) = exp(A + C) / (exp(N) + Σ exp(A) · Σ exp(C)), with outputs [none, addresses…, commands…].
 */
import type { Head } from "../network/weightsOf";

export interface Outputs {
  readonly addresses: number;
  readonly commands: number;
}

export class Joint {
  readonly #head: Head;
  readonly #outputs: Outputs;
  readonly #inputs: number;
  /** exp of each output over the largest, after `see`. */
  readonly #powers: Float64Array;
  #addressSum = 0;
  #commandSum = 0;
  none = 1;

  constructor(head: Head, outputs: Outputs) {
    this.#head = head;
    this.#outputs = outputs;
    this.#inputs = head.weights.length / head.bias.length;
    this.#powers = new Float64Array(head.bias.length);
  }

  see(summary: Float32Array): void {
    const { weights, bias } = this.#head;
    const { addresses } = this.#outputs;
    const logits = this.#powers;
    for (let o = 0; o < bias.length; o++) {
      let sum = bias[o] as number;
      const row = o * this.#inputs;
      for (let k = 0; k < this.#inputs; k++) sum += (weights[row + k] as number) * (summary[k] as number);
      logits[o] = sum;
    }
    let [bestAddress, bestCommand] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let o = 1; o < logits.length; o++) {
      if (o <= addresses) bestAddress = Math.max(bestAddress, logits[o] as number);
      else bestCommand = Math.max(bestCommand, logits[o] as number);
    }
    const nothing = logits[0] as number;
    this.#addressSum = 0;
    this.#commandSum = 0;
    for (let o = 1; o < logits.length; o++) {
      const power = Math.exp((logits[o] as number) - (o <= addresses ? bestAddress : bestCommand));
      logits[o] = power;
      if (o <= addresses) this.#addressSum += power;
      else this.#commandSum += power;
    }
    // P(none) = e^N / (e^N + e^(bestA + bestC) · ΣA · ΣC), without overflow.
    const others = bestAddress + bestCommand + Math.log(this.#addressSum * this.#commandSum);
    this.none = 1 / (1 + Math.exp(Math.min(700, others - nothing)));
  }

  p(address: number, command: number): number {
    return (
      ((1 - this.none) * this.#addressPower(address) * this.#commandPower(command)) /
      (this.#addressSum * this.#commandSum)
    );
  }

  /** Adds to `slopes` how the loss −log P(target) moves with each output; target null is "none of these". */
  slopes(target: { readonly address: number; readonly command: number } | null, slopes: Float64Array): number {
    const some = 1 - this.none;
    const { addresses, commands } = this.#outputs;
    slopes[0] = this.none - (target === null ? 1 : 0);
    for (let a = 0; a < addresses; a++) {
      slopes[1 + a] = (some * this.#addressPower(a)) / this.#addressSum - (target?.address === a ? 1 : 0);
    }
    for (let c = 0; c < commands; c++) {
      slopes[1 + addresses + c] = (some * this.#commandPower(c)) / this.#commandSum - (target?.command === c ? 1 : 0);
    }
    const likely = target === null ? this.none : this.p(target.address, target.command);
    return -Math.log(Math.max(likely, 1e-12));
  }

  #addressPower(address: number): number {
    return this.#powers[1 + address] ?? 0;
  }
  #commandPower(command: number): number {
    return this.#powers[1 + this.#outputs.addresses + command] ?? 0;
  }
}
