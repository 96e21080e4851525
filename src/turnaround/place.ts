/** One more action at the end of a beginning: what it starts, what it leaves running, what it does to gloves. */

import { type Action, type Beginning, clockOf, glovesOff, halfBits, keepWet, rewet, wetEnough } from "./beginning";
import type { Model } from "./model";

/** Puts one more action at the end. The caller sees to it that it may come now and that the gloves fit. */
export function place(model: Model, parent: Beginning, action: Action, floor: number): Beginning {
  if (action === glovesOff) {
    const start = Math.max(parent.end, floor);
    return begun(parent, action, floor, start, model.gloveChange, { soiled: false, changes: parent.changes + 1 });
  }
  return action < model.n ? placeTask(model, parent, action, floor) : placeRewet(model, parent, action, floor);
}

function begun(
  parent: Beginning,
  action: Action,
  floor: number,
  start: number,
  hands: number,
  more: { soiled: boolean; changes: number },
): Mutable {
  return {
    parent,
    action,
    floor,
    start,
    end: start + hands,
    depth: parent.depth + 1,
    tasksDone: parent.tasksDone,
    low: parent.low,
    high: parent.high,
    soiled: more.soiled,
    release: parent.release,
    tailEnd: parent.tailEnd,
    changes: more.changes,
    rewets: parent.rewets,
    work: parent.work + hands,
    workAt: parent.workAt,
    endOf: parent.endOf,
    wetness: parent.wetness,
    appliedEnd: parent.appliedEnd,
    wettedEnd: parent.wettedEnd,
    wettedWork: parent.wettedWork,
    wettings: parent.wettings,
    ready: 0,
    changesAtLeast: 0,
    rewetsAtLeast: 0,
    dropped: false,
  };
}

type Mutable = { -readonly [Key in keyof Beginning]: Beginning[Key] };

function placeTask(model: Model, parent: Beginning, task: number, floor: number): Beginning {
  const start = Math.max(parent.end, floor, parent.release[task] ?? 0);
  const soiled = model.cleanliness[task] === "soiled" || parent.soiled;
  const next = begun(parent, task, floor, start, model.hands[task] ?? 0, { soiled, changes: parent.changes });
  next.tasksDone += 1;
  if (task < halfBits) next.low |= 1 << task;
  else next.high |= 1 << (task - halfBits);
  next.tailEnd = Math.max(next.tailEnd, next.end + (model.tail[task] ?? 0));
  const links = model.after[task] ?? [];
  if (links.length > 0) {
    const release = next.release.slice();
    for (const link of links) release[link.to] = Math.max(release[link.to] ?? 0, next.end + link.wait);
    next.release = release;
  }
  if (!model.canPushBack) return next;
  next.workAt = changed(next.workAt, task, next.work);
  next.endOf = changed(next.endOf, task, next.end);
  const clock = model.clocks.findIndex((one) => one.task === task);
  return clock < 0 ? next : wetted(next, clock, keepWet, { first: true });
}

function placeRewet(model: Model, parent: Beginning, action: Action, floor: number): Beginning {
  const at = clockOf(model, action);
  const clock = model.clocks[at];
  if (!clock) throw new Error(`no wet clock ${at}`);
  const last = action === rewet(model, at, true);
  const lastsUntil = (parent.appliedEnd[at] ?? 0) + clock.contact;
  const start = Math.max(parent.end, floor, last ? lastsUntil - clock.within - clock.hands : 0);
  const soiled = clock.cleanliness === "soiled" || parent.soiled;
  const next = begun(parent, action, floor, start, clock.hands, { soiled, changes: parent.changes });
  next.rewets += 1;
  return wetted(next, at, last ? wetEnough : keepWet, { first: false });
}

function wetted(next: Mutable, clock: number, state: number, { first }: { first: boolean }): Beginning {
  next.wetness = changed(next.wetness, clock, state);
  next.wettedEnd = changed(next.wettedEnd, clock, next.end);
  next.wettedWork = changed(next.wettedWork, clock, next.work);
  if (first) next.appliedEnd = changed(next.appliedEnd, clock, next.end);
  else next.wettings = changed(next.wettings, clock, (next.wettings[clock] ?? 0) + 1);
  return next;
}

function changed<Row extends Float64Array | Int8Array>(row: Row, at: number, value: number): Row {
  const copy = row.slice() as Row;
  copy[at] = value;
  return copy;
}
