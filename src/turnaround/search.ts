/**
 * Depth-first branch and bound over orders of work, the most promising continuation first.
 *
 * Why it is exact: every plan is an order of actions, and for an order the earliest times are the best times (see
 * timing). The search leaves out an order only if no plan that begins so can beat the limit (bounds), or if another
 * order with the same tasks done can be continued in every way at least as well (dominance), or if a glove change in it
 * fills no gap (next). When the stack is empty, nothing better than the limit exists.
 */

import { type Beginning, isWhole } from "./beginning";
import { Seen } from "./dominance";
import type { Model } from "./model";
import { continuations, rewettings } from "./next";
import { isBetter, mayBeat, type Value, worthOf } from "./value";

export type Bound = (at: Beginning) => boolean;

export class Search {
  readonly seen: Seen;
  nodes = 0;
  best: Beginning | undefined;
  private readonly stack: Beginning[] = [];
  private readonly model: Model;
  private readonly bound: Bound;
  private limit: Value;
  /** Excluded before by an earlier search with the same limit. */
  private readonly excluded: Seen | undefined;

  constructor(model: Model, bound: Bound, roots: readonly Beginning[], limit: Value, excluded?: Seen) {
    this.model = model;
    this.bound = bound;
    this.limit = limit;
    this.excluded = excluded;
    this.seen = new Seen(model);
    for (const root of roots) this.admit(root, this.stack);
  }

  get finished(): boolean {
    return this.stack.length === 0;
  }

  /** Lower bound on everything not yet looked at, seconds; Infinity when nothing is left. */
  get openReady(): number {
    let least = Number.POSITIVE_INFINITY;
    for (const at of this.stack) if (!at.dropped) least = Math.min(least, at.ready);
    return least;
  }

  /** Looks at up to `nodes` more partial plans; `untilFirst` also stops at the first whole plan within the limit. */
  run(nodes: number, untilFirst = false): void {
    const end = this.nodes + nodes;
    while (this.nodes < end) {
      const at = this.stack.pop();
      if (!at) return;
      if (at.dropped || !mayBeat(at, this.limit)) continue;
      this.nodes++;
      if (isWhole(this.model, at)) {
        const value = worthOf(at);
        if (!isBetter(value, this.limit)) continue;
        this.best = at;
        this.limit = value;
        if (untilFirst) return;
        continue;
      }
      const next: Beginning[] = [];
      for (const one of continuations(this.model, at)) this.admit(one, next);
      for (const one of rewettings(this.model, at)) this.admit(one, next);
      next.sort((one, other) => byPromise(this.model, other, one));
      for (const one of next) this.stack.push(one);
    }
  }

  private admit(at: Beginning, to: Beginning[]): void {
    if (!this.bound(at) || !mayBeat(at, this.limit)) return;
    if (this.excluded?.covers(at)) return;
    if (this.seen.admits(at)) to.push(at);
  }
}

/** Sooner, fewer changes, fewer re-applications, less idling, more left to do afterwards, earlier in writing. */
export function byPromise(model: Model, one: Beginning, other: Beginning): number {
  return (
    one.ready - other.ready ||
    one.changesAtLeast - other.changesAtLeast ||
    one.rewetsAtLeast - other.rewetsAtLeast ||
    one.end - one.work - (other.end - other.work) ||
    (model.rest[other.action] ?? 0) - (model.rest[one.action] ?? 0) ||
    one.action - other.action
  );
}
