/**
 * Words of the artist's own, in any language: compared with the takes that taught them, however fast or slowly they are
 * said this time. What is compared is the embedding, one every 80 ms, so no transcript and no language is needed.
 *
 * Subsequence dynamic time warping: each new embedding extends the best way through a take that could end here.
 */

export interface Template {
  /** Embeddings of one take, from its first sound to a little after its last; each of length one. */
  readonly steps: readonly Float32Array[];
}

/** A pause in the middle of a phrase must not be free, nor one sound held for ever. */
const stayCost = 0.02;

/** How far the newest sound is from one take: 0 the same, about 1 unrelated. */
export class TemplateMatch {
  readonly #steps: readonly Float32Array[];
  #cost: Float64Array;
  #length: Float64Array;
  #next: { cost: Float64Array; length: Float64Array };

  constructor({ steps }: Template) {
    this.#steps = steps;
    this.#cost = new Float64Array(steps.length).fill(1e6);
    this.#length = new Float64Array(steps.length).fill(1);
    this.#next = { cost: new Float64Array(steps.length), length: new Float64Array(steps.length) };
  }

  /** @param embedding of length one. @returns mean distance along the best way that ends now. */
  step(embedding: Float32Array): number {
    const { cost, length } = this.#next;
    for (let i = 0; i < this.#steps.length; i++) {
      const here = 1 - dot(this.#steps[i] as Float32Array, embedding);
      let [best, steps] = i === 0 ? [0, 0] : [this.#cost[i - 1] as number, this.#length[i - 1] as number];
      const better = (otherCost: number, otherSteps: number) => {
        if ((otherCost + stayCost) * (steps + 1) >= best * (otherSteps + 1) && best < 1e5) return;
        [best, steps] = [otherCost + stayCost, otherSteps];
      };
      better(this.#cost[i] as number, this.#length[i] as number);
      if (i > 0) better(cost[i - 1] as number, length[i - 1] as number);
      cost[i] = best + here;
      length[i] = steps + 1;
    }
    this.#next = { cost: this.#cost, length: this.#length };
    this.#cost = cost;
    this.#length = length;
    const last = this.#steps.length - 1;
    return (cost[last] as number) / (length[last] as number);
  }
}

/** The same vector with length one, so that loudness of a feature over all does not count. */
export function unit(embedding: Float32Array): Float32Array {
  const size = Math.sqrt(dot(embedding, embedding)) + 1e-9;
  return embedding.map((x) => x / size);
}

function dot(a: Float32Array, b: Float32Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += (a[k] as number) * (b[k] as number);
  return sum;
}

/** The nearest that `sound` comes to a take, anywhere in it. */
export function nearest(template: Template, sound: readonly Float32Array[]): number {
  const match = new TemplateMatch(template);
  return sound.reduce((least, embedding) => Math.min(least, match.step(embedding)), Number.POSITIVE_INFINITY);
}
