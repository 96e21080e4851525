/** What the plan of a breakdown foretells while it is walked. Nothing in it is kept: it follows from the facts anew. */
import type { Plan, TurnaroundProblem } from "../problem";

/** Watched milliseconds of the session. */
export type WatchedMs = number;

export interface Forecast {
  readonly plan: Plan;
  readonly problem: TurnaroundProblem;
  /** Second 0 of the plan. */
  readonly madeAtMs: WatchedMs;
  /** Steps of the breakdown done while this page lived, with the time they took. */
  readonly past: readonly { readonly step: string; readonly fromMs: WatchedMs; readonly toMs: WatchedMs }[];
  /** The next client's set-up as it is written, seconds; null until planned, or where it cannot be. */
  readonly nextSetUpSec: number | null;
}
