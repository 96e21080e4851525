/**
 * Turnarounds of the shape a station has, made at random from a seed: things to clear away, surfaces to clean, wet and
 * wipe, a last part with fresh gloves, and packing for the next client that takes clean gloves. All invented.
 */

import type { Cleanliness, Task, TurnaroundProblem } from "../problem";

/** Numbers in [0, 1) from a seed, the same on every machine (mulberry32; public domain, from memory). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** @param size number of tasks, at least 6. @param grainSec every time is a multiple of it, which keeps a time grid small. */
export function randomBreakdown(size: number, seed: number, grainSec: number): TurnaroundProblem {
  const random = seeded(seed * 1_000 + size);
  const between = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
  const grains = (least: number, most: number) => between(least, most) * grainSec;
  const tasks: Task[] = [];
  const add = (label: string, handsOnSec: number, cleanliness: Cleanliness, more: Partial<Task> = {}) => {
    const id = `${label}-${tasks.length + 1}`;
    tasks.push({ id, label, handsOnSec, cleanliness, after: [], ...more });
    return id;
  };
  const plain = (...ids: readonly string[]) => ids.map((task) => ({ task, minWaitSec: 0 }));

  const sharps = add("sharps", grains(1, 2), "soiled");
  const cleared: string[] = [];
  while (tasks.length < size) {
    const left = size - tasks.length;
    const kind = random();
    if (left >= 3 && kind < 0.55) {
      const clean = add("clean", grains(1, 2), "soiled", { after: plain(sharps, ...some(cleared, random)) });
      const contactSec = grains(3, 12);
      const reapplies = random() < 0.25;
      const wet = {
        contactSec,
        reapplyWithinSec: Math.ceil(contactSec / 2 / grainSec) * grainSec + grainSec,
        reapplySec: grainSec,
      };
      const apply = add("wet", grains(1, 2), "soiled", { after: plain(clean), ...(reapplies ? { wet } : {}) });
      const last = random() < 0.5;
      add("wipe", grains(1, 3), last ? "clean" : "either", {
        after: [{ task: apply, minWaitSec: contactSec }],
        tailSec: grains(0, 3),
      });
    } else if (kind < 0.8) {
      cleared.push(add("clear", grains(1, 3), "soiled", { after: plain(sharps, ...some(cleared, random)) }));
    } else {
      const packed = tasks.filter((task) => task.label === "pack").map((task) => task.id);
      add("pack", grains(1, 3), random() < 0.7 ? "clean" : "either", { after: plain(...some(packed, random)) });
    }
  }
  return { tasks, gloveChangeSec: 3 * grainSec, gloves: "soiled" };
}

function some(ids: readonly string[], random: () => number): readonly string[] {
  return ids.filter(() => random() < 0.3);
}
