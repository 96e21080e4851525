/** A plan for the terminal: a table of what to do when, and the same as a line of time with the wet clocks below it. */

import type { Plan, PlanStep, Task, TurnaroundProblem } from "./problem";

/** @param width columns for the line of time. */
export function planText(problem: TurnaroundProblem, plan: Plan, width = 60): string {
  return [...table(problem, plan), "", ...timeline(problem, plan, width), "", summary(plan), ""].join("\n");
}

export const clockTime = (sec: number): string => `${Math.floor(sec / 60)}:${String(sec % 60).padStart(2, "0")}`;

function nameOf(problem: TurnaroundProblem, step: PlanStep): string {
  if (step.kind === "gloves") return "change gloves, hand hygiene between";
  const task = problem.tasks.find((one) => one.id === step.task);
  const label = task?.label ?? step.task;
  return step.kind === "reapply" ? `wet again: ${label}` : label;
}

function table(problem: TurnaroundProblem, plan: Plan): string[] {
  const lines = ["  start    end  hands  what"];
  let free = 0;
  const line = (start: number, end: number, hands: string, what: string) =>
    `${clockTime(start).padStart(7)}${clockTime(end).padStart(7)}${hands.padStart(7)}  ${what}`;
  for (const step of plan.steps) {
    if (step.startSec > free) lines.push(line(free, step.startSec, "", "(hands free)"));
    lines.push(line(step.startSec, step.endSec, `${step.endSec - step.startSec} s`, nameOf(problem, step)));
    free = step.endSec;
  }
  if (plan.readySec > free) lines.push(line(free, plan.readySec, "", "(hands free)"));
  return [...lines, `${clockTime(plan.readySec).padStart(7)}${"".padStart(14)}  station ready`];
}

/** `#` hands at work, `g` glove change, `r` re-application; below, `~` for each wait that runs by itself. */
function timeline(problem: TurnaroundProblem, plan: Plan, width: number): string[] {
  const scale = Math.max(1, plan.readySec) / width;
  const bar = (marks: readonly { from: number; to: number; mark: string }[]): string => {
    const cells = new Array<string>(width).fill(".");
    for (const { from, to, mark } of marks)
      for (let at = Math.floor(from / scale); at < Math.min(width, Math.ceil(to / scale)); at++) cells[at] = mark;
    return cells.join("");
  };
  const mark = { task: "#", gloves: "g", reapply: "r" } as const;
  const hands = plan.steps.map((step) => ({ from: step.startSec, to: step.endSec, mark: mark[step.kind] }));
  const lines = [`  hands  |${bar(hands)}| 0:00 to ${clockTime(plan.readySec)}`];
  for (const task of problem.tasks) {
    const wait = longestWait(problem, task);
    const end = endSec(problem, plan, task);
    if (wait === 0 || end === undefined || end + wait <= 0) continue;
    const runs = [{ from: Math.max(0, end), to: end + wait, mark: "~" }];
    lines.push(`  waits  |${bar(runs)}| ${task.label ?? task.id}, ${clockTime(wait)}`);
  }
  return lines;
}

function longestWait(problem: TurnaroundProblem, task: Task): number {
  const asked = problem.tasks.flatMap((other) => other.after.filter((after) => after.task === task.id));
  return Math.max(0, task.tailSec ?? 0, task.wet?.contactSec ?? 0, ...asked.map((after) => after.minWaitSec));
}

function endSec(problem: TurnaroundProblem, plan: Plan, task: Task): number | undefined {
  const step = plan.steps.find((one) => one.kind === "task" && one.task === task.id);
  if (step) return step.endSec;
  const ago = problem.soFar?.done.find((one) => one.task === task.id)?.agoSec;
  return ago === undefined ? undefined : -ago;
}

function summary(plan: Plan): string {
  const proof = plan.proved
    ? "proved: no order is ready sooner"
    : `not proved: nothing can be ready before ${clockTime(plan.lowerBoundSec)}`;
  const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
  return `Ready at ${clockTime(plan.readySec)} (${proof}), with ${counted(plan.gloveChanges, "glove change", "glove changes")} and ${counted(plan.reapplications, "re-application", "re-applications")}.`;
}
