import { describe, expect, it } from "vitest";
import { randomBreakdown } from "./checks/randomBreakdown";
import { type PlannerAnswer, planner } from "./planner";
import type { TurnaroundProblem } from "./problem";
import { solve } from "./solve";

/** A planner whose slices run when the test says so. */
function workbench() {
  const told: PlannerAnswer[] = [];
  const waiting: (() => void)[] = [];
  const take = planner({ tell: (answer) => told.push(answer), later: (run) => waiting.push(run) });
  const runSlices = (most: number) => {
    for (let ran = 0; ran < most && waiting.length > 0; ran++) waiting.shift()?.();
  };
  return { told, take, runSlices, answers: () => told.filter((one) => one.kind === "answer") };
}

const plan = (question: number, problem: TurnaroundProblem, budgetNodes = 1_000_000) =>
  ({ kind: "plan", question, problem, budgetNodes }) as const;
const hard = randomBreakdown(40, 6, 5);
const easy = randomBreakdown(12, 1, 5);

describe("the planner in its worker", () => {
  it("answers with the very plan that planning in one go gives, save for the nodes it took", () => {
    const { take, runSlices, answers } = workbench();
    take(plan(1, easy));
    runSlices(1_000);
    const whole = solve(easy);
    expect(answers()).toEqual([{ kind: "answer", question: 1, answer: { ...whole, nodes: expect.any(Number) } }]);
  });

  it("drops a question when the next one comes", () => {
    const { take, runSlices, answers } = workbench();
    take(plan(1, hard));
    runSlices(2);
    take(plan(2, easy));
    runSlices(1_000);
    expect(answers().map((one) => one.question)).toEqual([2]);
  });

  it("answers with the best so far when told to stop, and then is quiet", () => {
    const { take, runSlices, answers } = workbench();
    take(plan(1, hard));
    runSlices(4);
    take({ kind: "stop" });
    runSlices(1_000);
    take({ kind: "stop" });
    expect(answers()).toMatchObject([{ question: 1, answer: { kind: "planned", proved: false } }]);
  });

  it("answers with the best so far when its budget ends", () => {
    const { take, runSlices, answers } = workbench();
    take(plan(1, hard, 400));
    runSlices(1_000);
    expect(answers()).toMatchObject([{ answer: { kind: "planned", proved: false } }]);
  });

  it("tells of every better plan or bound on the way", () => {
    const { take, runSlices, told } = workbench();
    take(plan(1, hard, 2_000));
    runSlices(1_000);
    const progress = told.flatMap((one) => (one.kind === "progress" ? [one.progress] : []));
    expect(progress.length).toBeGreaterThan(1);
    expect(progress.at(-1)?.readySec).toBeLessThan(progress[0]?.readySec ?? 0);
  });

  it("refuses an impossible question at once", () => {
    const { take, answers } = workbench();
    take(
      plan(7, {
        gloves: "clean",
        gloveChangeSec: 1,
        tasks: [{ id: "a", handsOnSec: -1, cleanliness: "either", after: [] }],
      }),
    );
    expect(answers()).toMatchObject([{ question: 7, answer: { kind: "impossible", code: "bad-number" } }]);
  });
});
