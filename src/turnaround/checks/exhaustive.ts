/**
 * The planning problem solved the slow, plain way, to check the planner against: second by second, every choice of
 * doing something or waiting, all of them followed. It knows no bounds, no orders and no latest-time arithmetic.
 */

import type { Task, TurnaroundProblem } from "../problem";

export interface Best {
  readonly readySec: number;
  readonly gloveChanges: number;
  readonly reapplications: number;
  readonly order: readonly string[];
}

interface State {
  readonly soiled: boolean;
  /** Seconds since each task ended, capped where no rule asks further; -1 if it has not. */
  readonly ago: readonly number[];
  /** Seconds since each surface was last wetted, capped likewise. */
  readonly wetAgo: readonly number[];
  readonly changes: number;
  readonly rewets: number;
  /** Written places of the tasks in the order done. */
  readonly order: readonly number[];
}

/** The best plan, or undefined if there is none that is ready within `horizonSec`. */
export function exhaustive(problem: TurnaroundProblem, horizonSec: number): Best | undefined {
  const { tasks, gloveChangeSec } = problem;
  const place = new Map(tasks.map((task, at) => [task.id, at]));
  const caps = tasks.map((task) => longestInterest(task, tasks));
  const done = new Map((problem.soFar?.done ?? []).map((one) => [one.task, one]));
  const byTime: Map<string, State>[] = Array.from({ length: horizonSec + 1 }, () => new Map());
  let best: { ready: number; state: State } | undefined;

  /** Whether the surface a task left still has contact time to go. */
  const needsWet = (ago: readonly number[], at: number): boolean =>
    (ago[at] ?? -1) >= 0 && (ago[at] ?? 0) < (tasks[at]?.wet?.contactSec ?? 0);
  const windows = tasks.flatMap((task, to) =>
    task.after.flatMap((after) =>
      after.maxWaitSec === undefined ? [] : [{ to, from: place.get(after.task) ?? 0, latest: after.maxWaitSec }],
    ),
  );
  const tooLate = (ago: readonly number[], doing: number | undefined): boolean =>
    windows.some(({ to, from, latest }) => to !== doing && (ago[to] ?? 0) < 0 && (ago[from] ?? 0) > latest);

  const file = (at: number, state: State) => {
    if (at > horizonSec) return;
    const key = `${state.soiled}|${state.ago.join()}|${state.wetAgo.join()}`;
    const other = byTime[at]?.get(key);
    if (!other || precedes(state, other)) byTime[at]?.set(key, state);
  };
  /** The same state `seconds` later, or undefined if a surface dried or a window closed before its time, save for the task being done. */
  const later = (state: State, seconds: number, doing?: number): State | undefined => {
    for (const [at, task] of tasks.entries()) {
      const ended = state.ago[at] ?? -1;
      if (!task.wet || ended < 0) continue;
      const stretch = Math.min(seconds, task.wet.contactSec - ended);
      if (stretch > 0 && (state.wetAgo[at] ?? 0) + stretch > task.wet.reapplyWithinSec) return undefined;
    }
    const ago = state.ago.map((one, at) => (one < 0 ? one : Math.min(one + seconds, caps[at] ?? 0)));
    if (tooLate(ago, doing)) return undefined;
    const wetAgo = state.wetAgo.map((one, at) => (needsWet(ago, at) ? one + seconds : 0));
    return { ...state, ago, wetAgo };
  };
  const mayStart = (state: State, task: Task, now: number): boolean =>
    now >= (task.notBeforeSec ?? 0) &&
    !(task.cleanliness === "clean" && state.soiled) &&
    task.after.every((after) => {
      const ago = state.ago[place.get(after.task) ?? 0] ?? -1;
      return ago >= after.minWaitSec && ago <= (after.maxWaitSec ?? Number.POSITIVE_INFINITY);
    });

  const inHand = problem.soFar?.inHand;
  const start: State = {
    soiled: problem.gloves === "soiled",
    ago: tasks.map((task, at) => (done.has(task.id) ? Math.min(done.get(task.id)?.agoSec ?? 1e9, caps[at] ?? 0) : -1)),
    wetAgo: tasks.map((task) => {
      const { agoSec = 0, wettedAgoSec = agoSec } = done.get(task.id) ?? {};
      return agoSec < (task.wet?.contactSec ?? 0) ? Math.min(wettedAgoSec, agoSec) : 0;
    }),
    changes: 0,
    rewets: 0,
    order: [],
  };
  if (inHand) {
    const at = place.get(inHand.task) ?? 0;
    const after = later(start, inHand.remainingSec, at);
    const kind = tasks[at]?.cleanliness;
    if (after)
      file(inHand.remainingSec, ended({ ...after, soiled: kind === "either" ? after.soiled : kind === "soiled" }, at));
  } else file(0, start);

  for (let now = 0; now <= horizonSec; now++) {
    if (best && now > best.ready) break;
    for (const state of byTime[now]?.values() ?? []) {
      if (state.ago.every((ago) => ago >= 0)) {
        const keepsWet = tasks.every(
          ({ wet }, at) =>
            !wet ||
            !needsWet(state.ago, at) ||
            (state.ago[at] ?? 0) - (state.wetAgo[at] ?? 0) + wet.reapplyWithinSec >= wet.contactSec,
        );
        const tail = Math.max(0, ...tasks.map((task, at) => (task.tailSec ?? 0) - (state.ago[at] ?? 0)));
        const ready = now + tail;
        if (keepsWet && (!best || ready < best.ready || (ready === best.ready && precedes(state, best.state))))
          best = { ready, state };
      }
      const waited = later(state, 1);
      if (waited) file(now + 1, waited);
      if (state.soiled) {
        const changed = later(state, gloveChangeSec);
        if (changed) file(now + gloveChangeSec, { ...changed, soiled: false, changes: state.changes + 1 });
      }
      for (const [at, task] of tasks.entries()) {
        if ((state.ago[at] ?? 0) < 0) {
          if (!mayStart(state, task, now)) continue;
          const after = later(state, task.handsOnSec, at);
          if (after)
            file(now + task.handsOnSec, ended({ ...after, soiled: after.soiled || task.cleanliness === "soiled" }, at));
        } else if (
          task.wet &&
          (state.ago[at] ?? 0) < task.wet.contactSec &&
          !(task.cleanliness === "clean" && state.soiled)
        ) {
          const after = later(state, task.wet.reapplySec);
          if (!after) continue;
          const wetAgo = after.wetAgo.map((one, other) => (other === at ? 0 : one));
          const soiled = after.soiled || task.cleanliness === "soiled";
          file(now + task.wet.reapplySec, { ...after, wetAgo, soiled, rewets: state.rewets + 1 });
        }
      }
    }
  }
  return (
    best && {
      readySec: best.ready,
      gloveChanges: best.state.changes,
      reapplications: best.state.rewets,
      order: best.state.order.map((at) => tasks[at]?.id ?? ""),
    }
  );
}

function ended(state: State, task: number): State {
  const put = (row: readonly number[]) => row.map((ago, at) => (at === task ? 0 : ago));
  return { ...state, ago: put(state.ago), wetAgo: put(state.wetAgo), order: [...state.order, task] };
}

/** Fewer glove changes, then fewer re-applications, then closer to the written order. */
function precedes(one: State, other: State): boolean {
  if (one.changes !== other.changes) return one.changes < other.changes;
  if (one.rewets !== other.rewets) return one.rewets < other.rewets;
  const at = one.order.findIndex((task, index) => task !== other.order[index]);
  return at >= 0 && (one.order[at] ?? 0) < (other.order[at] ?? 0);
}

function longestInterest(task: Task, tasks: readonly Task[]): number {
  const waits = tasks.flatMap((other) => other.after.filter((after) => after.task === task.id));
  const asked = waits.map((after) => (after.maxWaitSec === undefined ? after.minWaitSec : after.maxWaitSec + 1));
  return Math.max(0, task.tailSec ?? 0, task.wet?.contactSec ?? 0, ...asked);
}
