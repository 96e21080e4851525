/**
 * Planning in slices, so that a worker stays open to the next question: asking anew drops the old question, and every
 * slice that finds something better is told. Pure but for the `later` it is handed.
 */

import { z } from "zod";
import type { Planned, TurnaroundProblem } from "./problem";
import { type Progress, startPlanning } from "./solve";

/** Worker messages in: plan this (dropping what was being planned), or stop and answer with the best so far. */
export type PlannerAsk =
  | {
      readonly kind: "plan";
      readonly question: number;
      readonly problem: TurnaroundProblem;
      readonly budgetNodes: number;
    }
  | { readonly kind: "stop" };

/** Worker messages out. `question` is the number the question came with; a dropped question gets no answer. */
export type PlannerAnswer =
  | { readonly kind: "progress"; readonly question: number; readonly progress: Progress }
  | { readonly kind: "answer"; readonly question: number; readonly answer: Planned };

/** The envelope is checked here; the problem inside is refused by its own rules. */
export const plannerAsk = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("plan"),
    question: z.int(),
    problem: z.custom<TurnaroundProblem>((value) => typeof value === "object" && value !== null),
    budgetNodes: z.int().min(1),
  }),
  z.strictObject({ kind: z.literal("stop") }),
]);

interface Ports {
  readonly tell: (answer: PlannerAnswer) => void;
  /** Runs the next slice once waiting messages have been read. */
  readonly later: (run: () => void) => void;
}

const sliceNodes = 500;

/** @returns the function that takes each message in. */
export function planner({ tell, later }: Ports): (ask: PlannerAsk) => void {
  let current: (() => void) | undefined;

  return (ask) => {
    if (ask.kind === "stop") {
      const stop = current;
      current = undefined;
      stop?.();
      return;
    }
    const { question } = ask;
    const planning = startPlanning(ask.problem);
    current = undefined;
    if (planning.kind === "impossible") {
      tell({ kind: "answer", question, answer: planning });
      return;
    }
    const finish = () => tell({ kind: "answer", question, answer: planning.answer() });
    current = finish;
    let told: Progress | undefined;
    const slice = () => {
      if (current !== finish) return;
      planning.step(sliceNodes);
      const { progress } = planning;
      if (progress.readySec !== told?.readySec || progress.lowerBoundSec !== told.lowerBoundSec) {
        told = progress;
        tell({ kind: "progress", question, progress });
      }
      if (!planning.finished && progress.nodes < ask.budgetNodes) {
        later(slice);
        return;
      }
      current = undefined;
      finish();
    };
    later(slice);
  };
}
