/**
 * Start times for an order. All rules are of the form "this start no earlier than that start plus so much", so for
 * a given order there is one schedule in which *every* start is as early as it can be, and it is the best in every
 * respect. Without latest times it is found going forward once. A latest time says "the earlier task no earlier than
 * ...", which pushes the earlier task back; so we go forward again until nothing moves. If that does not settle within
 * one round for each action, the rules contradict each other (Bellman and Ford's longest-path rule).
 */

import { type Action, type Beginning, clockOf } from "./beginning";
import type { Model } from "./model";
import { place } from "./place";

/** Puts `action` at the end and lets earlier starts move as they must. Undefined if no start times keep every window. */
export function append(model: Model, parent: Beginning, action: Action): Beginning | undefined {
  const next = place(model, parent, action, 0);
  if (action >= 0 && action < model.n && next.start > (model.latest[action] ?? 0)) return undefined;
  if (!model.canPushBack || !breaksWindow(model, next)) return next;
  return settle(model, next);
}

/** Whether the last action itself comes too late after something earlier. */
function breaksWindow(model: Model, last: Beginning): boolean {
  if (last.action < 0) return false;
  if (last.action < model.n)
    return model.windows.some(
      (link) => link.to === last.action && last.start > (last.endOf[link.from] ?? 0) + link.latest,
    );
  const clock = clockOf(model, last.action);
  return last.end > (last.parent?.wettedEnd[clock] ?? 0) + (model.clocks[clock]?.within ?? 0);
}

function settle(model: Model, whole: Beginning): Beginning | undefined {
  let last = whole;
  for (let round = 0; round <= whole.depth + 1; round++) {
    const chain = chainOf(last);
    const floors = chain.map((one) => one.floor);
    const verdict = raise(model, chain, floors);
    if (verdict === "never") return undefined;
    if (verdict === "settled") return last;
    let at = rootOf(last);
    for (const [position, one] of chain.entries()) {
      at = place(model, at, one.action, floors[position] ?? 0);
      if (one.action >= 0 && one.action < model.n && at.start > (model.latest[one.action] ?? 0)) return undefined;
    }
    last = at;
  }
  return undefined;
}

/** Raises the floor of each action that has to start later for a window after it to be kept. */
function raise(model: Model, chain: readonly Beginning[], floors: number[]): "settled" | "moved" | "never" {
  const taskAt = new Map<number, number>();
  const wettedAt = new Map<number, number>();
  let moved = false;
  const notBefore = (position: number, start: number): boolean => {
    if ((chain[position]?.start ?? 0) >= start) return true;
    if (chain[position]?.action === model.inHand) return false;
    floors[position] = Math.max(floors[position] ?? 0, start);
    moved = true;
    return true;
  };
  for (const [position, one] of chain.entries()) {
    if (one.action < 0) continue;
    if (one.action < model.n) {
      taskAt.set(one.action, position);
      const clock = model.clocks.findIndex((wet) => wet.task === one.action);
      if (clock >= 0) wettedAt.set(clock, position);
      for (const link of model.windows) {
        if (link.to !== one.action) continue;
        const from = taskAt.get(link.from) ?? 0;
        if (!notBefore(from, one.start - link.latest - (model.hands[link.from] ?? 0))) return "never";
      }
      continue;
    }
    const at = clockOf(model, one.action);
    const clock = model.clocks[at];
    const before = wettedAt.get(at);
    wettedAt.set(at, position);
    if (!clock) continue;
    if (before === undefined) {
      if (one.end > clock.wettedEnd + clock.within) return "never";
      continue;
    }
    const earlier = chain[before];
    const hands = earlier ? earlier.end - earlier.start : 0;
    if (!notBefore(before, one.end - clock.within - hands)) return "never";
  }
  return moved ? "moved" : "settled";
}

/** The actions of a plan from first to last. */
export function chainOf(last: Beginning): Beginning[] {
  const chain: Beginning[] = [];
  for (let at: Beginning | undefined = last; at?.parent; at = at.parent) chain.push(at);
  return chain.reverse();
}

function rootOf(last: Beginning): Beginning {
  let at = last;
  while (at.parent) at = at.parent;
  return at;
}
