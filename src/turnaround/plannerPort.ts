/** Who answers a planning problem: a worker in the app, the solver itself in tests and rehearsals. */
import type { Planned, TurnaroundProblem } from "./problem";
import { solve } from "./solve";

export interface PlannerPort {
  /** The newest question counts: an older one that is still open answers null. */
  ask(problem: TurnaroundProblem): Promise<Planned | null>;
  close(): void;
}

/** About a second of search on a slow phone; bundled breakdowns need under a hundred. */
export const sessionNodes = 5_000;

export const plannerHere = (nodes = sessionNodes): PlannerPort => ({
  ask: async (problem) => solve(problem, { budget: { nodes } }),
  close() {},
});
