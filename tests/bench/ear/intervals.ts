/** Intervals beside every figure: a Poisson bound for events in time, a bootstrap by speaker for shares. */
import { seededRandom } from "../../../src/rehearsal/random";

/** One-sided 95 % upper bound of a Poisson count: solves P(at most `count` | bound) = 0.05 (0 → 2.9957, as in tables). */
export function poissonUpper(count: number): number {
  const atMost = (mean: number): number => {
    let term = Math.exp(-mean);
    let sum = term;
    for (let k = 1; k <= count; k++) {
      term *= mean / k;
      sum += term;
    }
    return sum;
  };
  let [low, high] = [0, 10 + 4 * count];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (atMost(middle) > 0.05) low = middle;
    else high = middle;
  }
  return high;
}

/** Mean over all, with the middle 95 % of means when whole speakers are drawn again with replacement. */
export function bootstrapped(
  bySpeaker: readonly (readonly number[])[],
  draws = 2000,
): readonly [number, number, number] {
  const random = seededRandom(5);
  const meanOf = (groups: readonly (readonly number[])[]) => {
    const all = groups.flat();
    return all.reduce((sum, x) => sum + x, 0) / Math.max(1, all.length);
  };
  const means = Array.from({ length: draws }, () =>
    meanOf(bySpeaker.map(() => bySpeaker[Math.floor(random() * bySpeaker.length)] ?? [])),
  ).sort((a, b) => a - b);
  return [meanOf(bySpeaker), means[Math.floor(0.025 * draws)] ?? 0, means[Math.floor(0.975 * draws)] ?? 1];
}
