/** How a refusal is made: a closed code for machines, plain words for people. */

import type { Impossible, ImpossibleCode, Task } from "./problem";

export const no = (code: ImpossibleCode, words: string): Impossible => ({ kind: "impossible", code, words });

export const name = (task: Task): string => `"${task.label ?? task.id}"`;

/** The first refusal a check finds among several things, if any. */
export function first<T>(items: readonly T[], check: (item: T) => Impossible | undefined): Impossible | undefined {
  for (const item of items) {
    const found = check(item);
    if (found) return found;
  }
  return undefined;
}
