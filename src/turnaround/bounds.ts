/** No plan that begins like this one is ready sooner, changes gloves less often, or re-applies less often than this. */

import { type Beginning, isDone, keepWet, notWet, wetEnough } from "./beginning";
import type { Model } from "./model";
import { Jobs } from "./onePair";

/** Makes the function that writes the three bounds into a partial plan; it answers false if no plan can begin so. */
export function bounder(model: Model): (at: Beginning) => boolean {
  const { n, clocks, gloveChange } = model;
  const owed = clocks.map((clock) => Math.ceil(clock.contact / clock.within) - 1);
  const jobs = new Jobs(3 * n + 2 + owed.reduce((sum, one) => sum + one, 0));
  const heads = new Float64Array(n);

  return (at) => {
    let changes = 0;
    let cleanTail = Number.POSITIVE_INFINITY;
    for (const task of model.inOrder) {
      if (isDone(at, task)) continue;
      const needsClean = model.cleanliness[task] === "clean";
      let head = Math.max(at.release[task] ?? 0, at.end + (needsClean && at.soiled ? gloveChange : 0));
      for (const link of model.before[task] ?? []) {
        if (isDone(at, link.from)) continue;
        const between =
          needsClean && model.cleanliness[link.from] === "soiled" ? Math.max(link.wait, gloveChange) : link.wait;
        head = Math.max(head, (heads[link.from] ?? 0) + (model.hands[link.from] ?? 0) + between);
      }
      if (head > (model.latest[task] ?? 0)) {
        jobs.count = 0;
        return false;
      }
      heads[task] = head;
      jobs.add(head, model.hands[task] ?? 0, model.rest[task] ?? 0);
      changes = Math.max(changes, (at.soiled ? model.changesFromSoiled[task] : model.changesFromClean[task]) ?? 0);
      if (needsClean) cleanTail = Math.min(cleanTail, (model.hands[task] ?? 0) + (model.rest[task] ?? 0));
    }
    // Each change still to come takes the hands, and clean work follows it.
    for (let i = 0; i < changes; i++) jobs.add(at.end, gloveChange, cleanTail);

    let rewets = 0;
    for (const [index, clock] of clocks.entries()) {
      const state = at.wetness[index];
      if (state === wetEnough) continue;
      const times =
        state === notWet ? (owed[index] ?? 0) : Math.max(1, (owed[index] ?? 0) - pastOwed(at, index, clock));
      const head = state === notWet ? (heads[clock.task] ?? 0) + (model.hands[clock.task] ?? 0) : at.end;
      let tail = clock.holds.length > 0 ? Number.POSITIVE_INFINITY : 0;
      for (const task of clock.holds)
        if (!isDone(at, task)) tail = Math.min(tail, (model.hands[task] ?? 0) + (model.rest[task] ?? 0));
      for (let i = 0; i < times; i++) jobs.add(head, clock.hands, Number.isFinite(tail) ? tail : 0);
      rewets += times;
    }
    at.ready = Math.max(at.tailEnd, at.end, jobs.readySec());
    at.changesAtLeast = at.changes + changes;
    at.rewetsAtLeast = at.rewets + rewets;
    return model.canPushBack ? windowsStillOpen(model, at) : true;
  };
}

/** Re-applications already made, counted the way the least number is: a clock running from before may have had some. */
function pastOwed(at: Beginning, index: number, clock: Model["clocks"][number]): number {
  const before = clock.task < 0 ? Math.max(0, Math.ceil((clock.wettedEnd - clock.appliedEnd) / clock.within)) : 0;
  return before + (at.wettings[index] ?? 0);
}

/** Even with every earlier task as late as can be, the work since fills the time: a window that is lost already. */
function windowsStillOpen(model: Model, at: Beginning): boolean {
  for (const link of model.windows) {
    if (!isDone(at, link.from) || isDone(at, link.to)) continue;
    const change = at.soiled && model.cleanliness[link.to] === "clean" ? model.gloveChange : 0;
    if (at.work - (at.workAt[link.from] ?? 0) + change > link.latest) return false;
  }
  for (const [index, clock] of model.clocks.entries()) {
    if (at.wetness[index] !== keepWet) continue;
    const past = clock.task < 0 && at.wettings[index] === 0;
    const since = past ? at.end - clock.wettedEnd : at.work - (at.wettedWork[index] ?? 0);
    const change = at.soiled && clock.cleanliness === "clean" ? model.gloveChange : 0;
    if (since + change + clock.hands > clock.within) return false;
  }
  return true;
}
