/**
 * Moves the last layer of the phrase model towards one artist's voice: away from the phrases taken for nothing or for
 * another, held near the layer that it was, and held down on stored sound that is none of the phrases. Pure, and the same
 * numbers in give the same layer out.
 */
import { seededRandom } from "../../rehearsal/random";
import type { Head } from "../network/weightsOf";
import { Joint, type Outputs } from "./joint";

export interface Example {
  readonly summary: Float32Array;
  /** Places among the model's outputs; null for sound that is no phrase. */
  readonly target: { readonly address: number; readonly command: number } | null;
}

const rounds = 16;
const batch = 32;
const stepSize = 0.004;
/** How strongly each weight is pulled back to where it came from, each step. */
const pull = 0.002;
/** A phrase counts for more than what is none: else what resembles it pushes it away too, in noise most. */
const phraseWeight = 2;
/** An output that is right to a thousandth teaches nothing more; passing it over saves time. */
const leastSlope = 1e-3;

export function tuneHead(from: Head, outputs: Outputs, examples: readonly Example[]): Head {
  const head = { weights: Float32Array.from(from.weights), bias: Float32Array.from(from.bias) };
  const joint = new Joint(head, outputs);
  const count = from.bias.length;
  const inputs = from.weights.length / count;
  const slopes = new Float64Array(count);
  const gradient = new Float64Array(from.weights.length + count);
  const mean = new Float64Array(gradient.length);
  const square = new Float64Array(gradient.length);
  const random = seededRandom(19);
  const order = examples.map((_, n) => n);
  let step = 0;
  for (let round = 0; round < rounds; round++) {
    shuffle(order, random);
    const eased = stepSize * (1 - (0.9 * round) / rounds);
    for (let at = 0; at < order.length; at += batch) {
      gradient.fill(0);
      const some = order.slice(at, at + batch);
      for (const n of some) {
        const { summary, target } = examples[n] as Example;
        joint.see(summary);
        joint.slopes(target, slopes);
        for (let o = 0; o < count; o++) {
          if (Math.abs(slopes[o] as number) < leastSlope) continue;
          const slope = ((target === null ? 1 : phraseWeight) * (slopes[o] as number)) / some.length;
          const row = o * inputs;
          for (let k = 0; k < inputs; k++)
            gradient[row + k] = (gradient[row + k] as number) + slope * (summary[k] as number);
          gradient[from.weights.length + o] = (gradient[from.weights.length + o] as number) + slope;
        }
      }
      step += 1;
      move(head.weights, from.weights, gradient, mean, square, 0, step, eased);
      move(head.bias, from.bias, gradient, mean, square, from.weights.length, step, eased);
    }
  }
  return head;
}

/** One step of Adam (Kingma & Ba 2015), with a pull back to where each weight came from. */
function move(
  weights: Float32Array,
  home: Float32Array,
  gradient: Float64Array,
  mean: Float64Array,
  square: Float64Array,
  offset: number,
  step: number,
  size: number,
): void {
  const [a, b] = [1 - 0.9 ** step, 1 - 0.999 ** step];
  for (let i = 0; i < weights.length; i++) {
    const g = gradient[offset + i] as number;
    const m = 0.9 * (mean[offset + i] as number) + 0.1 * g;
    const v = 0.999 * (square[offset + i] as number) + 0.001 * g * g;
    mean[offset + i] = m;
    square[offset + i] = v;
    const away = (weights[i] as number) - (home[i] as number);
    weights[i] = (weights[i] as number) - size * (m / a / (Math.sqrt(v / b) + 1e-8)) - pull * away;
  }
}

function shuffle(order: number[], random: () => number): void {
  for (let n = order.length - 1; n > 0; n--) {
    const other = Math.floor(random() * (n + 1));
    [order[n], order[other]] = [order[other] as number, order[n] as number];
  }
}
