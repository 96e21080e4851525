import { test } from "@fast-check/vitest";
import * as fc from "fast-check";
import { describe, expect } from "vitest";
import { anyProblem } from "./checks/anyProblem";
import { breaches } from "./checks/breaches";
import type { DoneTask, Plan, PlanStep, TurnaroundProblem } from "./problem";
import { solve } from "./solve";

/** One thing that happens: the next step of the plan is done, so much late, and something else may be done out of turn. */
const happening = fc.record({ lateSec: fc.nat(5), outOfTurn: fc.option(fc.nat(8), { nil: undefined }) });

interface Here {
  readonly problem: TurnaroundProblem;
  readonly gloves: "soiled" | "clean";
  readonly done: readonly DoneTask[];
}

function after(here: Here, step: PlanStep, lateSec: number): Here {
  const passed = step.endSec + lateSec;
  const aged = here.done.map((one) => ({
    task: one.task,
    agoSec: (one.agoSec ?? 0) + passed,
    wettedAgoSec: (one.wettedAgoSec ?? one.agoSec ?? 0) + passed,
  }));
  if (step.kind === "gloves") return { ...here, gloves: "clean", done: aged };
  const kind = here.problem.tasks.find((task) => task.id === step.task)?.cleanliness;
  const gloves = kind === "soiled" ? "soiled" : here.gloves;
  if (step.kind === "task") return { ...here, gloves, done: [...aged, { task: step.task, agoSec: lateSec }] };
  return {
    ...here,
    gloves,
    done: aged.map((one) => (one.task === step.task ? { ...one, wettedAgoSec: lateSec } : one)),
  };
}

const problemAt = ({ problem, gloves, done }: Here): TurnaroundProblem => ({ ...problem, gloves, soFar: { done } });

describe("every plan, and every plan made anew after anything that happens, keeps every rule", () => {
  test.prop([anyProblem({ most: 9, windows: true }), fc.array(happening, { maxLength: 8 })], { numRuns: 300 })(
    "with steps done late and tasks done out of turn",
    (problem, happenings) => {
      let here: Here = { problem, gloves: problem.gloves, done: [] };
      for (const { lateSec, outOfTurn } of happenings) {
        const now = problemAt(here);
        const answer = solve(now, { budget: { nodes: 3_000 } });
        if (answer.kind !== "planned") return;
        expect(breaches(now, answer)).toEqual([]);
        const step = outOfTurn === undefined ? answer.steps[0] : outOfTurnStep(answer, outOfTurn);
        if (!step) return;
        here = after(here, step, lateSec);
      }
    },
  );

  test.prop([anyProblem({ most: 12, windows: true })], { numRuns: 200 })(
    "with some tasks done and one in hand from the start",
    (problem) => {
      const answer = solve(problem, { budget: { nodes: 3_000 } });
      expect(answer.kind === "planned" ? breaches(problem, answer) : []).toEqual([]);
    },
  );
});

function outOfTurnStep(plan: Plan, place: number): PlanStep | undefined {
  const tasks = plan.steps.filter((step) => step.kind === "task");
  const step = tasks[place % Math.max(1, tasks.length)];
  return step && { ...step, startSec: 0, endSec: step.endSec - step.startSec };
}
