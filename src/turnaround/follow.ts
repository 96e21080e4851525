/** What must follow each task whatever the order: the time until the station is ready, and glove changes still to come. */

import type { Link } from "./model";
import { Jobs } from "./onePair";
import type { Cleanliness } from "./problem";

interface Shape {
  readonly n: number;
  readonly hands: readonly number[];
  readonly tail: readonly number[];
  readonly cleanliness: readonly Cleanliness[];
  readonly after: readonly (readonly Link[])[];
  readonly inOrder: readonly number[];
  readonly gloveChange: number;
}

export interface Follow {
  /** Least time from the end of each task until the station is ready, seconds. */
  readonly rest: readonly number[];
  /** Least number of glove changes from each task on, if the gloves are clean (soiled) just before it. */
  readonly changesFromClean: readonly number[];
  readonly changesFromSoiled: readonly number[];
}

/** Walks the tasks from the last to the first; each figure rests on those of the tasks that follow. */
export function followBounds(shape: Shape): Follow {
  const { n } = shape;
  const rest = [...shape.tail];
  const fromClean = new Array<number>(n).fill(0);
  const fromSoiled = new Array<number>(n).fill(0);
  const between = Array.from({ length: n }, () => new Array<number>(n).fill(Number.NEGATIVE_INFINITY));
  const jobs = new Jobs(n * 2);

  for (const task of [...shape.inOrder].reverse()) {
    const kind = shape.cleanliness[task];
    const gap = between[task] ?? [];
    let changesAfterClean = 0;
    let changesAfterSoiled = 0;
    for (const link of shape.after[task] ?? []) {
      const needsChange = kind === "soiled" && shape.cleanliness[link.to] === "clean";
      const wait = needsChange ? Math.max(link.wait, shape.gloveChange) : link.wait;
      gap[link.to] = Math.max(gap[link.to] ?? 0, wait);
      const onward = wait + (shape.hands[link.to] ?? 0);
      between[link.to]?.forEach((further, to) => {
        gap[to] = Math.max(gap[to] ?? 0, onward + further);
      });
      changesAfterClean = Math.max(changesAfterClean, fromClean[link.to] ?? 0);
      changesAfterSoiled = Math.max(changesAfterSoiled, fromSoiled[link.to] ?? 0);
    }
    fromClean[task] = kind === "soiled" ? changesAfterSoiled : changesAfterClean;
    fromSoiled[task] = kind === "clean" ? 1 + changesAfterClean : changesAfterSoiled;

    // All that follows has to go through one pair of hands after this task, and so do the changes among it.
    let leastTail = Number.POSITIVE_INFINITY;
    gap.forEach((wait, to) => {
      if (wait < 0) return;
      jobs.add(wait, shape.hands[to] ?? 0, rest[to] ?? 0);
      if (shape.cleanliness[to] === "clean") leastTail = Math.min(leastTail, (shape.hands[to] ?? 0) + (rest[to] ?? 0));
    });
    const changes = kind === "soiled" ? changesAfterSoiled : changesAfterClean;
    for (let i = 0; i < changes; i++) jobs.add(0, shape.gloveChange, leastTail);
    rest[task] = Math.max(rest[task] ?? 0, jobs.readySec());
  }
  return { rest, changesFromClean: fromClean, changesFromSoiled: fromSoiled };
}
