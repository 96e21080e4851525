/** What may come next in a partial plan: each task that is free, each re-wetting that is owed, with or without a glove change before. */

import { type Beginning, glovesOff, isDone, keepWet, rewet, wetEnough } from "./beginning";
import type { Model } from "./model";
import type { Cleanliness } from "./problem";
import { append } from "./timing";

/** All partial plans one decision longer, in written order. `only` keeps just the ones that do this task next. */
export function continuations(model: Model, at: Beginning, only?: number): Beginning[] {
  const found: Beginning[] = [];
  if (model.inHand >= 0 && !isDone(at, model.inHand)) {
    if (only === undefined || only === model.inHand) keep(found, append(model, at, model.inHand));
    return found;
  }
  if (only === undefined) {
    for (let task = 0; task < model.n; task++) if (isFree(model, at, task)) withGloves(model, at, task, found);
  } else if (isFree(model, at, only)) withGloves(model, at, only, found);
  return found;
}

/** All partial plans one re-wetting longer. Whether it is the last one is a decision: the last must reach the end of the contact time. */
export function rewettings(model: Model, at: Beginning): Beginning[] {
  const found: Beginning[] = [];
  if (model.inHand >= 0 && !isDone(at, model.inHand)) return found;
  model.clocks.forEach((wet, clock) => {
    if (at.wetness[clock] !== keepWet) return;
    withGloves(model, at, rewet(model, clock, true), found);
    // One that reaches the end of the contact time whatever the timing leaves nothing for a later one to do.
    const since = wet.task < 0 ? at.end - wet.appliedEnd : at.work - (at.workAt[wet.task] ?? 0);
    if (since + wet.hands < wet.contact - wet.within) withGloves(model, at, rewet(model, clock, false), found);
  });
  return found;
}

function isFree(model: Model, at: Beginning, task: number): boolean {
  if (isDone(at, task)) return false;
  for (const link of model.before[task] ?? []) if (!isDone(at, link.from)) return false;
  return model.clocks.every((clock, index) => at.wetness[index] === wetEnough || !clock.holds.includes(task));
}

/**
 * Soiled work needs no change; clean work in soiled gloves cannot do without; before work that takes either, a change
 * can pay where there is time to fill or a window to keep. Where neither is so, doing the work first and changing
 * afterwards is at least as good: the work ends sooner and everything after it starts when it did.
 */
function withGloves(model: Model, at: Beginning, action: number, found: Beginning[]): void {
  const kind: Cleanliness | undefined =
    action < model.n ? model.cleanliness[action] : model.clocks[(action - model.n) >> 1]?.cleanliness;
  if (!at.soiled || kind === "soiled") {
    keep(found, append(model, at, action));
    return;
  }
  if (kind === "either") {
    keep(found, append(model, at, action));
    const idle = action >= model.n || (at.release[action] ?? 0) > at.end;
    if (!(model.canPushBack || idle) || !cleanWorkLeft(model, at)) return;
  }
  const changed = append(model, at, glovesOff);
  if (changed) keep(found, append(model, changed, action));
}

function cleanWorkLeft(model: Model, at: Beginning): boolean {
  for (let task = 0; task < model.n; task++) if (model.cleanliness[task] === "clean" && !isDone(at, task)) return true;
  return model.clocks.some((clock, index) => clock.cleanliness === "clean" && at.wetness[index] !== wetEnough);
}

function keep(found: Beginning[], one: Beginning | undefined): void {
  if (one) found.push(one);
}
