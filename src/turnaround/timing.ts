/**
 * Start times for an order. All rules are of the form "this start no earlier than that start plus so much", so for
 * a given order there is one schedule in which *every* start is as early as it can be, and it is the best in every
 * respect. Without latest times it is found going forward once. A latest time says "the earlier task no earlier than
 * ...", which pushes the earlier task back; so we go forward again until nothing moves. If that does not settle within
 * one round for each action, the rules contradict each other (Bellman and Ford's longest-path rule).
 */

import { type Action, type Beginning, clockOf, rewet } from "./beginning";
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
  const chain = chainOf(whole);
  const actions = chain.map((one) => one.action);
  const times: Times = {
    actions,
    floors: Float64Array.from(chain, (one) => one.floor),
    starts: new Float64Array(actions.length),
    ends: new Float64Array(actions.length),
    release: new Float64Array(model.n),
  };
  for (let round = 0; round <= whole.depth + 1; round++) {
    if (!forward(model, times)) return undefined;
    const verdict = raise(model, times);
    if (verdict === "never") return undefined;
    if (verdict === "settled") {
      let at = rootOf(whole);
      for (const [position, action] of actions.entries()) at = place(model, at, action, times.floors[position] ?? 0);
      return at;
    }
  }
  return undefined;
}

/** An order of actions with the earliest times that its floors allow; made anew in each round, so kept in plain arrays. */
interface Times {
  readonly actions: readonly Action[];
  readonly floors: Float64Array;
  readonly starts: Float64Array;
  readonly ends: Float64Array;
  readonly release: Float64Array;
}

/** The times that `place` would give. False if a task would start after its latest time. */
function forward(model: Model, { actions, floors, starts, ends, release }: Times): boolean {
  release.set(model.earliest);
  const appliedEnd = model.clocks.map((clock) => clock.appliedEnd);
  let free = 0;
  for (let at = 0; at < actions.length; at++) {
    const action = actions[at] as Action;
    let start = Math.max(free, floors[at] ?? 0);
    let hands = model.gloveChange;
    if (action >= model.n) {
      const clock = clockOf(model, action);
      const wet = model.clocks[clock] as Model["clocks"][number];
      hands = wet.hands;
      if (action === rewet(model, clock, true))
        start = Math.max(start, (appliedEnd[clock] ?? 0) + wet.contact - wet.within - hands);
    } else if (action >= 0) {
      start = Math.max(start, release[action] ?? 0);
      hands = model.hands[action] ?? 0;
      if (start > (model.latest[action] ?? 0)) return false;
    }
    free = start + hands;
    starts[at] = start;
    ends[at] = free;
    if (action < 0 || action >= model.n) continue;
    for (const link of model.after[action] ?? []) release[link.to] = Math.max(release[link.to] ?? 0, free + link.wait);
    for (let clock = 0; clock < model.clocks.length; clock++)
      if (model.clocks[clock]?.task === action) appliedEnd[clock] = free;
  }
  return true;
}

/** Raises the floor of each action that has to start later for a window after it to be kept. */
function raise(model: Model, { actions, floors, starts, ends }: Times): "settled" | "moved" | "never" {
  const taskAt = new Int32Array(model.n).fill(-1);
  const wettedAt = new Int32Array(model.clocks.length).fill(-1);
  let moved = false;
  /** False where that start is past already: the hands are on it. */
  const notBefore = (position: number, start: number): boolean => {
    if ((starts[position] ?? 0) >= start) return true;
    if (actions[position] === model.inHand) return false;
    floors[position] = Math.max(floors[position] ?? 0, start);
    moved = true;
    return true;
  };
  for (let position = 0; position < actions.length; position++) {
    const action = actions[position] as Action;
    const start = starts[position] ?? 0;
    if (action < 0) continue;
    if (action < model.n) {
      taskAt[action] = position;
      for (let clock = 0; clock < model.clocks.length; clock++)
        if (model.clocks[clock]?.task === action) wettedAt[clock] = position;
      for (const link of model.windows) {
        if (link.to !== action) continue;
        const from = taskAt[link.from] ?? -1;
        if (!notBefore(from, start - link.latest - (model.hands[link.from] ?? 0))) return "never";
      }
      continue;
    }
    const at = clockOf(model, action);
    const clock = model.clocks[at];
    const before = wettedAt[at] ?? -1;
    wettedAt[at] = position;
    if (!clock) continue;
    const end = ends[position] ?? 0;
    if (before < 0) {
      if (end > clock.wettedEnd + clock.within) return "never";
      continue;
    }
    const hands = (ends[before] ?? 0) - (starts[before] ?? 0);
    if (!notBefore(before, end - clock.within - hands)) return "never";
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
