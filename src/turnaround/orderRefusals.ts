/** Orders and windows that contradict themselves, whatever has been done so far. */

import type { After, Impossible, Task, TurnaroundProblem } from "./problem";
import { first, name, no } from "./refusing";

type ById = ReadonlyMap<string, Task>;

/** The first contradiction among wet surfaces, windows and order, leaving out what is done; the names are known to be good. */
export function orderRefusal(problem: TurnaroundProblem, byId: ById): Impossible | undefined {
  const done = new Set(problem.soFar?.done.map((one) => one.task));
  const ahead = problem.tasks.filter((task) => !done.has(task.id));
  const notBegun = ahead.filter((task) => task.id !== problem.soFar?.inHand?.task);
  return (
    first(ahead, badWetSurface) ??
    first(notBegun, (task) => first(task.after, (after) => badWindow(task, after, byId))) ??
    cycle(problem, byId) ??
    windowShorterThanWork(notBegun, byId)
  );
}

function badWetSurface(task: Task): Impossible | undefined {
  const wet = task.wet;
  if (!wet) return undefined;
  if (!Object.values(wet).every((sec) => Number.isInteger(sec) && sec >= 1 && sec <= 1e6))
    return no("bad-wet-surface", `${name(task)}: contact time and re-application are whole seconds, at least 1.`);
  if (wet.contactSec <= wet.reapplyWithinSec) return undefined;
  const slowest = Math.max(task.handsOnSec, wet.reapplySec);
  if (wet.reapplyWithinSec >= slowest) return undefined;
  return no(
    "rewet-window-too-short",
    `${name(task)} has to be wetted again within ${wet.reapplyWithinSec} s, but wetting it takes ${slowest} s: the first part is dry before the last part is wet.`,
  );
}

function badWindow(task: Task, after: After, byId: ById): Impossible | undefined {
  if (after.maxWaitSec === undefined || after.maxWaitSec >= after.minWaitSec) return undefined;
  const before = byId.get(after.task);
  return no(
    "window-shorter-than-wait",
    `${name(task)} must wait ${after.minWaitSec} s after ${before ? name(before) : after.task}, but may start no later than ${after.maxWaitSec} s after it.`,
  );
}

/** Follows "after" backwards; a task met again on its own path closes a circle. */
function cycle(problem: TurnaroundProblem, byId: ById): Impossible | undefined {
  const settled = new Set<string>();
  const path: string[] = [];
  const visit = (task: Task): readonly string[] | undefined => {
    if (settled.has(task.id)) return undefined;
    const met = path.indexOf(task.id);
    if (met >= 0) return [...path.slice(met), task.id];
    path.push(task.id);
    for (const after of task.after) {
      const before = byId.get(after.task);
      const circle = before && visit(before);
      if (circle) return circle;
    }
    path.pop();
    settled.add(task.id);
    return undefined;
  };
  return first(problem.tasks, (task) => {
    const circle = visit(task);
    if (!circle) return undefined;
    const names = circle.map((id) => name(byId.get(id) ?? task));
    return no("cycle", `The order goes round in a circle: ${names.join(" waits for ")}.`);
  });
}

/** A latest start that comes before the work and waits which must lie between, whatever else is done. */
function windowShorterThanWork(notBegun: readonly Task[], byId: ById): Impossible | undefined {
  const ahead = new Set(notBegun);
  /** Longest chain of waits and work from the end of `from` to the start of `to`; minus infinity if there is none. */
  const between = (from: Task, to: Task, known: Map<Task, number>): number => {
    const before = known.get(to);
    if (before !== undefined) return before;
    let longest = Number.NEGATIVE_INFINITY;
    for (const after of to.after) {
      const earlier = byId.get(after.task);
      if (!earlier || !ahead.has(earlier)) continue;
      const via = earlier === from ? 0 : between(from, earlier, known) + earlier.handsOnSec;
      longest = Math.max(longest, via + after.minWaitSec);
    }
    known.set(to, longest);
    return longest;
  };
  return first(notBegun, (task) =>
    first(task.after, (after) => {
      const before = byId.get(after.task);
      if (after.maxWaitSec === undefined || !before) return undefined;
      const needed = between(before, task, new Map());
      if (needed <= after.maxWaitSec) return undefined;
      return no(
        "window-shorter-than-work",
        `${name(task)} may start no later than ${after.maxWaitSec} s after ${name(before)}, but what has to come between takes ${needed} s.`,
      );
    }),
  );
}
