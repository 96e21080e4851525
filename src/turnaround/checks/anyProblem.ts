/** Arbitrary small turnarounds: any order, waits, windows, wet surfaces, gloves, and any amount already done. */

import * as fc from "fast-check";
import type { After, Task, TurnaroundProblem } from "../problem";

interface Shape {
  readonly most: number;
  /** Whether latest times and surfaces that must be re-wetted occur. */
  readonly windows: boolean;
}

const cleanliness = fc.constantFrom("soiled", "clean", "either");

/** One time in three. */
const sometimes = <T>(what: fc.Arbitrary<T>): fc.Arbitrary<T | null> =>
  fc.oneof({ weight: 2, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: what });

/** Tasks may be written in another order than they can be done in: `rank` says which may come before which. */
export function anyProblem({ most, windows }: Shape): fc.Arbitrary<TurnaroundProblem> {
  const link = fc.record({
    on: fc.integer({ min: 0, max: 3 }),
    wait: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 7 })),
    slack: windows ? sometimes(fc.integer({ min: 0, max: 12 })) : fc.constant(null),
  });
  const wet = fc.record({
    contact: fc.integer({ min: 2, max: 9 }),
    within: fc.integer({ min: 1, max: 6 }),
    hands: fc.integer({ min: 1, max: 2 }),
  });
  const one = fc.record({
    hands: fc.integer({ min: 1, max: 4 }),
    cleanliness,
    tail: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 9 })),
    head: fc.oneof({ weight: 5, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.integer({ min: 1, max: 8 }) }),
    links: fc.array(link, { minLength: most, maxLength: most }),
    wet: windows ? sometimes(wet) : fc.constant(null),
    ago: fc.integer({ min: 0, max: 6 }),
  });
  return fc
    .record({
      tasks: fc.array(one, { minLength: 1, maxLength: most }),
      shuffle: fc.array(fc.nat(1000), { minLength: most, maxLength: most }),
      gloveChangeSec: fc.integer({ min: 1, max: 3 }),
      gloves: fc.constantFrom("soiled", "clean"),
      doneCount: fc.oneof({ weight: 2, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.nat(3) }),
      holdsOne: fc.boolean(),
    })
    .map((raw): TurnaroundProblem => {
      const rank = raw.tasks.map((_, at) => at).sort((a, b) => (raw.shuffle[a] ?? 0) - (raw.shuffle[b] ?? 0) || a - b);
      const id = (at: number) => `t${at}`;
      const tasks = raw.tasks.map((task, at): Task => {
        const place = rank.indexOf(at);
        const after = rank.slice(0, place).flatMap((before, index): After[] => {
          const made = task.links[index];
          if (!made || made.on > 0) return [];
          const contact = raw.tasks[before]?.wet?.contact;
          const minWaitSec = contact !== undefined && made.wait > 2 ? contact : made.wait;
          return [
            { task: id(before), minWaitSec, ...(made.slack === null ? {} : { maxWaitSec: minWaitSec + made.slack }) },
          ];
        });
        return {
          id: id(at),
          handsOnSec: task.hands,
          cleanliness: task.cleanliness,
          after,
          tailSec: task.tail,
          notBeforeSec: task.head,
          ...(task.wet
            ? {
                wet: {
                  contactSec: task.wet.contact,
                  reapplyWithinSec: Math.max(task.wet.within, task.wet.hands, task.hands),
                  reapplySec: task.wet.hands,
                },
              }
            : {}),
        };
      });
      const past = rank.slice(0, Math.min(raw.doneCount, Math.max(0, rank.length - 1)));
      const held = raw.holdsOne && raw.doneCount > 0 ? rank[past.length] : undefined;
      const done = past.map((at) => ({ task: id(at), agoSec: raw.tasks[at]?.ago ?? 0 }));
      const inHand = held === undefined ? {} : { inHand: { task: id(held), remainingSec: raw.tasks[held]?.ago ?? 0 } };
      const soFar = done.length > 0 ? { soFar: { done, ...inHand } } : {};
      return { tasks, gloveChangeSec: raw.gloveChangeSec, gloves: raw.gloves, ...soFar };
    });
}
