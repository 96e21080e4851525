/**
 * The beginning of a plan: what has been put in order so far and what follows from it. Immutable; each has its parent,
 * so that a plan is a chain. Every action starts as early as order and waits allow, or at a `floor` the timing asks for.
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

export interface Beginning {
  readonly parent: Beginning | undefined;
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

export const halfBits = 26;

export const isDone = (at: Beginning, task: number): boolean =>
  task < halfBits ? (at.low & (1 << task)) !== 0 : (at.high & (1 << (task - halfBits))) !== 0;

/** One exact integer below 2^52 for the set of finished tasks. */
export const setOf = (at: Beginning): number => at.high * 2 ** halfBits + at.low;

export const isWhole = (model: Model, at: Beginning): boolean =>
  at.tasksDone === model.n && at.wetness.every((state) => state !== keepWet);

/** Nothing planned yet: only what is past. */
export function nothingYet(model: Model): Beginning {
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
