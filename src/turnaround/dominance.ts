/**
 * Of two partial plans with the same tasks done, one is pointless if the other can be continued in every way the first
 * can, action for action, and never comes out later or with more changes. Kept in a table by set of tasks done.
 */

import { type Beginning, isDone, keepWet, setOf, wetEnough } from "./beginning";
import type { Model } from "./model";

/** More partial plans than this are not remembered. Forgetting costs time, never the proof. */
const mostRemembered = 600_000;

export class Seen {
  private readonly bySet = new Map<number, Beginning[]>();
  private remembered = 0;
  private readonly model: Model;

  constructor(model: Model) {
    this.model = model;
  }

  /** False if something seen before makes `at` pointless; otherwise remembers it and drops what it makes pointless. */
  admits(at: Beginning): boolean {
    const key = setOf(at);
    const others = this.bySet.get(key);
    if (!others) {
      if (this.remembered < mostRemembered) {
        this.remembered++;
        this.bySet.set(key, [at]);
      }
      return true;
    }
    if (others.some((other) => dominates(this.model, other, at))) return false;
    let kept = 0;
    for (const other of others) {
      if (dominates(this.model, at, other)) other.dropped = true;
      else others[kept++] = other;
    }
    this.remembered -= others.length - kept;
    others.length = kept;
    if (this.remembered < mostRemembered) {
      this.remembered++;
      others.push(at);
    }
    return true;
  }

  /** Takes over what another table has seen. */
  addAll(other: Seen): void {
    for (const beginnings of other.bySet.values()) for (const at of beginnings) this.admits(at);
  }

  covers(at: Beginning): boolean {
    return this.bySet.get(setOf(at))?.some((other) => dominates(this.model, other, at)) ?? false;
  }
}

/**
 * Whether `one` makes `other` pointless. Every rest-of-plan after `other` can follow `one` at the very same times: the
 * hands are free no later, every wait is over no later, the gloves are as clean. Only a window still open behind `one`
 * could forbid it, since `other` might have begun that window later; so then nothing is claimed.
 */
export function dominates(model: Model, one: Beginning, other: Beginning): boolean {
  if (one.end > other.end || one.tailEnd > other.ready) return false;
  let changes = one.changes;
  if (one.soiled && !other.soiled) {
    changes += 1;
    if (one.end + model.gloveChange > other.end) return false;
  }
  if (changes > other.changes || (changes === other.changes && one.rewets > other.rewets)) return false;
  const from = one.release;
  const to = other.release;
  const reach = other.end;
  for (let task = 0; task < model.n; task++) {
    const wait = from[task] ?? 0;
    if (wait > reach && wait > (to[task] ?? 0) && !isDone(other, task)) return false;
  }
  return !model.canPushBack || nothingOpen(model, one, other);
}

function nothingOpen(model: Model, one: Beginning, other: Beginning): boolean {
  for (const link of model.windows) if (isDone(one, link.from) && !isDone(one, link.to)) return false;
  for (let clock = 0; clock < model.clocks.length; clock++) {
    if (one.wetness[clock] !== keepWet) continue;
    const untouched = one.wettings[clock] === 0 && other.wettings[clock] === 0;
    if ((model.clocks[clock]?.task ?? 0) >= 0 || !untouched || other.wetness[clock] === wetEnough) return false;
  }
  return true;
}
