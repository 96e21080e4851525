/** What a plan is judged by, first difference decides: ready time, then glove changes, then re-applications. */

import type { Beginning } from "./beginning";

export interface Value {
  readonly ready: number;
  readonly changes: number;
  readonly rewets: number;
}

export const worst: Value = { ready: Number.POSITIVE_INFINITY, changes: 0, rewets: 0 };

export const worthOf = (whole: Beginning): Value => ({
  ready: Math.max(whole.tailEnd, whole.end),
  changes: whole.changes,
  rewets: whole.rewets,
});

/** The limit that lets through exactly what is as good as `value`: one re-application more is already too many. */
export const asGoodAs = (value: Value): Value => ({ ...value, rewets: value.rewets + 1 });

export const isBetter = (one: Value, other: Value): boolean =>
  one.ready !== other.ready
    ? one.ready < other.ready
    : one.changes !== other.changes
      ? one.changes < other.changes
      : one.rewets < other.rewets;

/** Whether some plan that begins so could still be better than the limit. */
export const mayBeat = (at: Beginning, limit: Value): boolean =>
  at.ready !== limit.ready
    ? at.ready < limit.ready
    : at.changesAtLeast !== limit.changes
      ? at.changesAtLeast < limit.changes
      : at.rewetsAtLeast < limit.rewets;
