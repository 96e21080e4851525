/** A good plan quickly, to have a limit before the proof begins: the best few beginnings of each length, widened twice. */

import { type Beginning, isWhole } from "./beginning";
import { Seen } from "./dominance";
import type { Model } from "./model";
import { continuations, rewettings } from "./next";
import { type Bound, byPromise } from "./search";
import { isBetter, mayBeat, type Value, worthOf } from "./value";

export interface FirstPlan {
  readonly plan: Beginning | undefined;
  readonly nodes: number;
}

/** Keeps `width` beginnings at each length; returns the best whole plan better than `limit` that it meets. */
export function firstPlan(model: Model, bound: Bound, root: Beginning, width: number, limit: Value): FirstPlan {
  let plan: Beginning | undefined;
  let best = limit;
  let nodes = 0;
  let level: Beginning[] = [root];
  while (level.length > 0) {
    const seen = new Seen(model);
    const next: Beginning[] = [];
    for (const at of level) {
      nodes++;
      for (const one of [...continuations(model, at), ...rewettings(model, at)]) {
        if (!bound(one) || !mayBeat(one, best)) continue;
        if (isWhole(model, one)) {
          const value = worthOf(one);
          if (!isBetter(value, best)) continue;
          best = value;
          plan = one;
        } else if (seen.admits(one)) next.push(one);
      }
    }
    level = next
      .filter((one) => !one.dropped)
      .sort((one, other) => byPromise(model, one, other))
      .slice(0, width);
  }
  return { plan, nodes };
}
