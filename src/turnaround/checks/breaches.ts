/** Reads a plan as a strict supervisor would and lists every rule its times break. Knows nothing of how it was made. */

import type { Plan, Task, TurnaroundProblem } from "../problem";

/** @returns one sentence for each breach; empty for a sound plan. */
export function breaches(problem: TurnaroundProblem, plan: Plan): string[] {
  const found: string[] = [];
  const never = (broken: boolean, words: string) => {
    if (broken) found.push(words);
  };
  const done = new Map(problem.soFar?.done.map((one) => [one.task, one]));
  const inHand = problem.soFar?.inHand;
  const byId = new Map(problem.tasks.map((task) => [task.id, task]));
  const ends = new Map<string, number>();
  for (const [id, one] of done) ends.set(id, one.agoSec === undefined ? Number.NEGATIVE_INFINITY : -one.agoSec);
  for (const step of plan.steps) if (step.kind === "task") ends.set(step.task, step.endSec);

  let free = 0;
  let soiled = problem.gloves === "soiled";
  let changes = 0;
  for (const [at, step] of plan.steps.entries()) {
    never(step.startSec < free, `step ${at} starts before the hands are free`);
    free = step.endSec;
    const took = step.endSec - step.startSec;
    if (step.kind === "gloves") {
      never(took !== problem.gloveChangeSec, `glove change ${at} takes ${took} s`);
      soiled = false;
      changes += 1;
      continue;
    }
    const task = byId.get(step.task);
    if (!task) throw new Error(`no task ${step.task}`);
    const held = step.kind === "task" && inHand?.task === step.task;
    never(held && (at > 0 || step.startSec > 0), `${task.id} is in hand and not finished first`);
    never(!held && task.cleanliness === "clean" && soiled, `${task.id} is done in soiled gloves`);
    if (task.cleanliness !== "either") soiled = task.cleanliness === "soiled";
    if (step.kind === "reapply") {
      never(took !== task.wet?.reapplySec, `re-application ${at} takes ${took} s`);
      continue;
    }
    never(took !== (held ? inHand?.remainingSec : task.handsOnSec), `${task.id} takes ${took} s`);
    if (held) continue;
    never(step.startSec < (task.notBeforeSec ?? 0), `${task.id} starts too early`);
    for (const after of task.after) {
      const end = ends.get(after.task) ?? Number.POSITIVE_INFINITY;
      never(step.startSec < end + after.minWaitSec, `${task.id} does not wait for ${after.task}`);
      never(
        step.startSec > end + (after.maxWaitSec ?? Number.POSITIVE_INFINITY),
        `${task.id} is too late after ${after.task}`,
      );
    }
  }
  for (const task of problem.tasks) {
    const times = plan.steps.filter((step) => step.kind === "task" && step.task === task.id).length;
    never(times !== (done.has(task.id) ? 0 : 1), `${task.id} is planned ${times} times`);
    never(plan.readySec < (ends.get(task.id) ?? 0) + (task.tailSec ?? 0), `${task.id} has waits past the ready time`);
    never(dries(task, ends.get(task.id) ?? 0, done.get(task.id)?.wettedAgoSec, plan), `${task.id} dries too early`);
  }
  never(plan.readySec < free, "work goes on past the ready time");
  never(changes !== plan.gloveChanges, "glove changes are miscounted");
  never(
    plan.steps.filter((step) => step.kind === "reapply").length !== plan.reapplications,
    "re-applications are miscounted",
  );
  return found;
}

function dries({ id, wet }: Task, endSec: number, wettedAgoSec: number | undefined, plan: Plan): boolean {
  if (!wet || !Number.isFinite(endSec)) return false;
  const until = endSec + wet.contactSec;
  let wetUntil = Math.max(endSec, -(wettedAgoSec ?? Number.POSITIVE_INFINITY)) + wet.reapplyWithinSec;
  for (const step of plan.steps) {
    if (step.kind !== "reapply" || step.task !== id) continue;
    if (step.endSec > wetUntil) break;
    wetUntil = step.endSec + wet.reapplyWithinSec;
  }
  return until > 0 && wetUntil < until;
}
