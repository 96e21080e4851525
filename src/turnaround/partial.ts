/**
 * A partial plan: what has been put in order so far and what follows from it. Immutable; each has its parent, so that a
 * plan is a chain. Every action starts as early as its order and waits allow, or at a `floor` the timing has asked for.
 */

import type { Model } from "./model";

/** A task's number; `glovesOff` for a glove change; n + 2c (and + 1 for the last one) for re-wetting clock c. */
export type Action = number;
export const glovesOff: Action = -1;
export const rewet = (model: Model, clock: number, last: boolean): Action => model.n + 2 * clock + (last ? 1 : 0);
export const clockOf = (model: Model, action: Action): number => (action - model.n) >> 1;

export const notWet = 0;
export const keepWet = 1;
export const wetEnough = 2;

export interface Partial {
  readonly parent: Partial | undefined;
  readonly action: Action;
  readonly floor: number;
  readonly start: number;
  readonly end: number;
  readonly depth: number;
  readonly tasksDone: number;
  /** The set of finished tasks, as two 26-bit halves. */
  readonly low: number;
  readonly high: number;
  readonly soiled: boolean;
  /** Earliest start of each task as far as past and planned waits say. */
  readonly release: Float64Array;
  /** When the last of the follow-up waits begun so far is over. */
  readonly tailEnd: number;
  readonly changes: number;
  readonly rewets: number;
  /** Hands-on seconds planned so far, and at the end of each task and each wetting. */
  readonly work: number;
  readonly workAt: Float64Array;
  readonly endOf: Float64Array;
  readonly wetness: Int8Array;
  readonly appliedEnd: Float64Array;
  readonly wettedEnd: Float64Array;
  readonly wettedWork: Float64Array;
  readonly wettings: Int8Array;
  /** Lower bounds on any plan that begins so; set by the bounds. */
  ready: number;
  changesAtLeast: number;
  rewetsAtLeast: number;
  /** Set when another partial plan makes this one pointless. */
  dropped: boolean;
}

const halfBits = 26;

export const isDone = (at: Partial, task: number): boolean =>
  task < halfBits ? (at.low & (1 << task)) !== 0 : (at.high & (1 << (task - halfBits))) !== 0;

/** One exact integer below 2^52 for the set of finished tasks. */
export const setOf = (at: Partial): number => at.high * 2 ** halfBits + at.low;

export const isWhole = (model: Model, at: Partial): boolean =>
  at.tasksDone === model.n && at.wetness.every((state) => state !== keepWet);

/** Nothing planned yet: only what is past. */
export function nothingYet(model: Model): Partial {
  const { clocks, n } = model;
  return {
    parent: undefined,
    action: glovesOff,
    floor: 0,
    start: 0,
    end: 0,
    depth: 0,
    tasksDone: 0,
    low: 0,
    high: 0,
    soiled: model.soiledAtStart,
    release: Float64Array.from(model.earliest),
    tailEnd: model.pastTail,
    changes: 0,
    rewets: 0,
    work: 0,
    workAt: new Float64Array(model.canPushBack ? n : 0),
    endOf: new Float64Array(model.canPushBack ? n : 0),
    wetness: Int8Array.from(clocks, (clock) => (clock.task < 0 ? keepWet : notWet)),
    appliedEnd: Float64Array.from(clocks, (clock) => clock.appliedEnd),
    wettedEnd: Float64Array.from(clocks, (clock) => clock.wettedEnd),
    wettedWork: new Float64Array(clocks.length),
    wettings: new Int8Array(clocks.length),
    ready: 0,
    changesAtLeast: 0,
    rewetsAtLeast: 0,
    dropped: false,
  };
}

/** Puts one more action at the end. The caller sees to it that it may come now and that the gloves fit. */
export function place(model: Model, parent: Partial, action: Action, floor: number): Partial {
  if (action === glovesOff) {
    const start = Math.max(parent.end, floor);
    return begun(parent, action, floor, start, model.gloveChange, { soiled: false, changes: parent.changes + 1 });
  }
  return action < model.n ? placeTask(model, parent, action, floor) : placeRewet(model, parent, action, floor);
}

function begun(
  parent: Partial,
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

type Mutable = { -readonly [Key in keyof Partial]: Partial[Key] };

function placeTask(model: Model, parent: Partial, task: number, floor: number): Partial {
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

function placeRewet(model: Model, parent: Partial, action: Action, floor: number): Partial {
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

function wetted(next: Mutable, clock: number, state: number, { first }: { first: boolean }): Partial {
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
