/** Problems no order of work can solve, found before any search, each refused in plain words. */

import { orderRefusal } from "./orderRefusals";
import { type Impossible, mostTasks, type Task, type TurnaroundProblem } from "./problem";
import { name, no } from "./refusing";

/** The reason why the problem cannot be planned, or undefined if nothing speaks against looking for an order. */
export function refusal(problem: TurnaroundProblem): Impossible | undefined {
  const byId = new Map(problem.tasks.map((task) => [task.id, task]));
  return badNames(problem, byId) ?? badNumbers(problem) ?? orderRefusal(problem, byId) ?? badSoFar(problem, byId);
}

function badNames(problem: TurnaroundProblem, byId: ReadonlyMap<string, Task>): Impossible | undefined {
  if (problem.tasks.length > mostTasks)
    return no(
      "too-many-tasks",
      `${problem.tasks.length} tasks are more than the ${mostTasks} that can be planned at once.`,
    );
  if (byId.size < problem.tasks.length) {
    const twice = problem.tasks.find((task) => byId.get(task.id) !== task);
    return no("duplicate-task", `Two tasks are both called "${twice?.id}".`);
  }
  const named = [
    ...problem.tasks.flatMap((task) => task.after.map((after) => after.task)),
    ...(problem.soFar?.done.map((done) => done.task) ?? []),
    ...(problem.soFar?.inHand ? [problem.soFar.inHand.task] : []),
  ];
  const stranger = named.find((id) => !byId.has(id));
  if (stranger !== undefined) return no("unknown-task", `"${stranger}" is named, but there is no such task.`);
  const counts = new Set<string>();
  for (const { task } of problem.soFar?.done ?? []) {
    if (counts.has(task)) return no("duplicate-task", `"${task}" is given as finished twice.`);
    counts.add(task);
  }
  const twin = problem.tasks.find((task) => new Set(task.after.map((after) => after.task)).size < task.after.length);
  return twin && no("duplicate-task", `${name(twin)} names the same earlier task twice.`);
}

function badNumbers(problem: TurnaroundProblem): Impossible | undefined {
  const whole = (value: number | undefined) =>
    value === undefined || (Number.isInteger(value) && value >= 0 && value <= 1e6);
  const good =
    whole(problem.gloveChangeSec) &&
    problem.tasks.every(
      (task) =>
        whole(task.handsOnSec) &&
        whole(task.tailSec) &&
        whole(task.notBeforeSec) &&
        task.after.every((after) => whole(after.minWaitSec) && whole(after.maxWaitSec)),
    ) &&
    (problem.soFar?.done ?? []).every((done) => whole(done.agoSec) && whole(done.wettedAgoSec)) &&
    whole(problem.soFar?.inHand?.remainingSec);
  return good ? undefined : no("bad-number", "Times are whole seconds from 0 to 1,000,000.");
}

/** What was done is never refused, in whatever order it came; only a window that is lost, or may be, is. */
function badSoFar(problem: TurnaroundProblem, byId: ReadonlyMap<string, Task>): Impossible | undefined {
  const soFar = problem.soFar;
  if (!soFar) return undefined;
  const done = new Map(soFar.done.map((one) => [one.task, one]));
  if (soFar.inHand && done.has(soFar.inHand.task))
    return no("out-of-order", `"${soFar.inHand.task}" is given both as finished and as in hand.`);
  for (const task of problem.tasks) {
    if (done.has(task.id) || soFar.inHand?.task === task.id) continue;
    for (const after of task.after) {
      const before = done.get(after.task);
      if (!before || after.maxWaitSec === undefined) continue;
      if (before.agoSec === undefined)
        return no(
          "window-unknown",
          `${name(task)} has a latest start after "${after.task}", but nothing says how long ago that ended.`,
        );
      if (before.agoSec > after.maxWaitSec)
        return no(
          "already-too-late",
          `It is too late for ${name(task)}: it had to start within ${after.maxWaitSec} s after "${after.task}".`,
        );
    }
  }
  for (const one of soFar.done) {
    const task = byId.get(one.task);
    if (!task?.wet || one.agoSec === undefined || one.agoSec >= task.wet.contactSec) continue;
    const wettedAgo = Math.min(one.agoSec, one.wettedAgoSec ?? one.agoSec);
    const leftSec = task.wet.reapplyWithinSec - wettedAgo;
    if (wettedAgo <= one.agoSec + task.wet.reapplyWithinSec - task.wet.contactSec) continue;
    if (leftSec < task.wet.reapplySec)
      return no(
        "already-too-late",
        `${name(task)} will be dry before it can be wetted again: apply it again from the start.`,
      );
  }
  return undefined;
}
