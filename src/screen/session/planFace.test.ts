import { describe, expect, it } from "vitest";
import type { Forecast } from "../../turnaround/breakdown/forecast";
import type { TurnaroundProblem } from "../../turnaround/problem";
import { solve } from "../../turnaround/solve";
import { planFace, stillToDo } from "./planFace";

const problem: TurnaroundProblem = {
  tasks: [
    { id: "wet", handsOnSec: 60, cleanliness: "soiled", after: [] },
    { id: "wipe", handsOnSec: 30, cleanliness: "clean", after: [{ task: "wet", minWaitSec: 300 }] },
  ],
  gloveChangeSec: 85,
  gloves: "soiled",
};
const plan = solve(problem);
if (plan.kind !== "planned") throw new Error(plan.kind);
const forecast: Forecast = { plan, problem, madeAtMs: 50_000, past: [], nextSetUpSec: 600 };

describe("the line of time", () => {
  it("runs from the plan's beginning to ready, hands above and what stays wet below", () => {
    const face = planFace(forecast, 50_000);
    expect(face).toMatchObject({ nowSec: 0, spanSec: 390, readyInSec: 390, nextInSec: 990 });
    expect(face.bars).toEqual([
      { kind: "task", step: "wet", fromSec: 0, toSec: 60 },
      { kind: "gloves", step: null, fromSec: 60, toSec: 145 },
      { kind: "task", step: "wipe", fromSec: 360, toSec: 390 },
    ]);
    expect(face.waits).toEqual([{ step: "wet", fromSec: 60, toSec: 360 }]);
  });

  it("keeps what was done at its left, and moves now along", () => {
    const past = [{ step: "sharps", fromMs: 20_000, toMs: 50_000 }];
    const face = planFace({ ...forecast, past }, 80_000);
    expect(face).toMatchObject({ nowSec: 60, spanSec: 420, readyInSec: 360 });
    expect(face.bars[0]).toEqual({ kind: "done", step: "sharps", fromSec: 0, toSec: 30 });
    expect(stillToDo(face).map((b) => b.kind)).toEqual(["task", "gloves", "task"]);
  });

  it("never puts ready behind now, however late the hands are", () => {
    const face = planFace(forecast, 900_000);
    expect(face.readyInSec).toBe(0);
    expect(face.spanSec).toBe(face.nowSec);
  });
});
