/** A finished chain of actions, told as a plan: who does what when. */

import { type Beginning, clockOf, glovesOff } from "./beginning";
import type { Model } from "./model";
import type { Plan, PlanStep, TaskId } from "./problem";
import { chainOf } from "./timing";
import { worthOf } from "./value";

type Proof = Pick<Plan, "lowerBoundSec" | "proved" | "writtenOrderProved" | "nodes">;

export function planOf(model: Model, whole: Beginning, proof: Proof): Plan {
  const steps = chainOf(whole).map((at): PlanStep => {
    const times = { startSec: at.start, endSec: at.end };
    if (at.action === glovesOff) return { kind: "gloves", ...times };
    if (at.action < model.n) return { kind: "task", task: model.tasks[at.action]?.id ?? "", ...times };
    return { kind: "reapply", task: model.clocks[clockOf(model, at.action)]?.id ?? "", ...times };
  });
  const order: TaskId[] = [];
  const startSec: Record<TaskId, number> = {};
  for (const step of steps) {
    if (step.kind !== "task") continue;
    order.push(step.task);
    startSec[step.task] = step.startSec;
  }
  const value = worthOf(whole);
  return {
    kind: "planned",
    order,
    steps,
    startSec,
    readySec: value.ready,
    gloveChanges: value.changes,
    reapplications: value.rewets,
    ...proof,
  };
}
