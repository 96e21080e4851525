import { describe, expect, it } from "vitest";
import { randomBreakdown } from "./checks/randomBreakdown";
import type { Plan, Task, TurnaroundProblem } from "./problem";
import { solve, startPlanning } from "./solve";

const task = (id: string, handsOnSec: number, more: Partial<Task> = {}): Task => ({
  id,
  handsOnSec,
  cleanliness: "either",
  after: [],
  ...more,
});
const then = (...ids: readonly string[]) => ids.map((id) => ({ task: id, minWaitSec: 0 }));
const problem = (tasks: readonly Task[], more: Partial<TurnaroundProblem> = {}): TurnaroundProblem => ({
  tasks,
  gloveChangeSec: 60,
  gloves: "soiled",
  ...more,
});
function planned(of: TurnaroundProblem): Plan {
  const answer = solve(of);
  if (answer.kind !== "planned") throw new Error(JSON.stringify(answer));
  return answer;
}
const steps = (plan: Plan) =>
  plan.steps.map((step) => `${step.kind === "gloves" ? "gloves" : step.task}@${step.startSec}`);

describe("planning", () => {
  it("changes gloves while a surface is wet, so that the change costs nothing", () => {
    const tasks = [
      task("wet", 20, { cleanliness: "soiled" }),
      task("wipe", 30, { cleanliness: "clean", after: [{ task: "wet", minWaitSec: 120 }] }),
    ];
    const plan = planned(problem(tasks));
    expect(steps(plan)).toEqual(["wet@0", "gloves@20", "wipe@140"]);
    expect(plan.readySec).toBe(170);
  });

  it("does all soiled work before the clean work that can wait, saving a glove change", () => {
    const tasks = [
      task("clear", 30, { cleanliness: "soiled" }),
      task("pack", 30, { cleanliness: "clean" }),
      task("bag", 30, { cleanliness: "soiled" }),
      task("seal", 30, { cleanliness: "clean", after: then("bag") }),
    ];
    const plan = planned(problem(tasks));
    expect(steps(plan)).toEqual(["clear@0", "bag@30", "gloves@60", "pack@120", "seal@150"]);
    expect(plan.gloveChanges).toBe(1);
  });

  it("keeps the written order where it costs nothing", () => {
    expect(planned(problem([task("c", 5), task("a", 5), task("b", 5)])).order).toEqual(["c", "a", "b"]);
  });

  it("wets a surface again before it dries, as late as the contact time needs", () => {
    const wet = { contactSec: 600, reapplyWithinSec: 240, reapplySec: 20 };
    const tasks = [task("wet", 30, { wet }), task("wipe", 40, { after: [{ task: "wet", minWaitSec: 600 }] })];
    const plan = planned(problem(tasks));
    expect(plan.reapplications).toBe(2);
    expect(plan.readySec).toBe(670);
    expect(plan.steps.filter((step) => step.kind === "reapply").map((step) => step.endSec <= 30 + 480)).toEqual([
      true,
      true,
    ]);
  });

  it("starts an opening later so that its window is kept", () => {
    const tasks = [
      task("open", 10),
      task("apply", 20),
      task("use", 10, {
        after: [
          { task: "open", minWaitSec: 0, maxWaitSec: 60 },
          { task: "apply", minWaitSec: 300 },
        ],
      }),
    ];
    const plan = planned(problem(tasks));
    expect(plan.readySec).toBe(330);
    expect((plan.startSec.use ?? 0) - (plan.startSec.open ?? 0) - 10).toBeLessThanOrEqual(60);
  });

  it("says the same on every run, and stops where its budget ends", () => {
    const hard = randomBreakdown(40, 6, 5);
    const short = solve(hard, { budget: { nodes: 300 } });
    expect(short).toEqual(solve(hard, { budget: { nodes: 300 } }));
    if (short.kind !== "planned") throw new Error(short.kind);
    expect(short.proved).toBe(false);
    expect(short.lowerBoundSec).toBeLessThan(short.readySec);
    expect(short.nodes).toBeGreaterThanOrEqual(300);
  });

  it("stops when the clock it was handed says so", () => {
    let nowMs = 0;
    const budget = {
      ms: 25,
      nowMs: () => {
        nowMs += 10;
        return nowMs;
      },
    };
    const seen: number[] = [];
    const hard = randomBreakdown(40, 6, 5);
    const answer = solve(hard, { budget, onProgress: (progress) => seen.push(progress.lowerBoundSec) });
    expect(answer).toMatchObject({ kind: "planned", proved: false });
    expect(seen).toHaveLength(2);
  });

  it("can be stepped, and never takes back a bound or a plan", () => {
    const planning = startPlanning(randomBreakdown(40, 6, 5));
    if (planning.kind === "impossible") throw new Error(planning.words);
    const seen = Array.from({ length: 12 }, () => {
      planning.step(100);
      return planning.progress;
    });
    expect(seen.map((one) => one.lowerBoundSec)).toEqual(seen.map((one) => one.lowerBoundSec).sort((a, b) => a - b));
    expect(seen.map((one) => one.readySec)).toEqual(seen.map((one) => one.readySec).sort((a, b) => b - a));
  });
});

describe("planning from where we are", () => {
  const tasks = [
    task("clear", 30, { cleanliness: "soiled" }),
    task("wet", 20, { cleanliness: "soiled", after: then("clear") }),
    task("wipe", 40, { cleanliness: "soiled", after: [{ task: "wet", minWaitSec: 300 }] }),
    task("pack", 60, { cleanliness: "either" }),
  ];

  it("waits only for what a running clock has still to go", () => {
    const done = [{ task: "clear" }, { task: "wet", agoSec: 250 }];
    expect(planned(problem(tasks, { soFar: { done } })).startSec).toEqual({ pack: 0, wipe: 60 });
  });

  it("finishes what is in hand first", () => {
    const soFar = { done: [{ task: "clear" }], inHand: { task: "pack", remainingSec: 25 } };
    expect(planned(problem(tasks, { soFar })).startSec).toEqual({ pack: 0, wet: 25, wipe: 345 });
  });

  it("takes a wipe that came before its time as done, and plans what is left", () => {
    const soFar = { done: [{ task: "wipe", agoSec: 0 }] };
    expect(planned(problem(tasks, { soFar })).order).toEqual(["clear", "wet", "pack"]);
  });

  it("is ready no sooner than a wait that still runs after the last task", () => {
    const one = [task("rub", 20, { tailSec: 90 })];
    expect(planned(problem(one, { soFar: { done: [{ task: "rub", agoSec: 30 }] } })).readySec).toBe(60);
  });
});
