/** Intervals beside every figure: a Poisson bound for events in time, a bootstrap by speaker for shares. */
import { seededRandom } from "../../rehearsal/random";

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

/**
 * Upper bound of a share, exact: the share at which so few as `count` of `total` come with probability `tail`, by default
 * 0.05, one-sided 95 %.
 * @see Clopper and Pearson, Biometrika 26 (1934); 0 of 100 → 0.0295
 */
export function shareUpper(count: number, total: number, tail = 0.05): number {
  if (count >= total) return 1;
  const atMost = (share: number): number => {
    let logTerm = total * Math.log1p(-share);
    let sum = Math.exp(logTerm);
    for (let k = 1; k <= count; k++) {
      logTerm += Math.log((total - k + 1) / k) + Math.log(share) - Math.log1p(-share);
      sum += Math.exp(logTerm);
    }
    return sum;
  };
  let [low, high] = [0, 1];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (atMost(middle) > tail) low = middle;
    else high = middle;
  }
  return high;
}

/** The value that `part` (0..1) of the numbers do not exceed; NaN of none. */
export function quantile(numbers: readonly number[], part: number): number {
  const sorted = numbers.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
}
