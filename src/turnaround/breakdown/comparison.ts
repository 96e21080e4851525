/** What planning saves: the plan, the same list as written, and standing beside each surface until its time is over. */
import type { Plan, Planned } from "../problem";
import { type SolveOptions, solve } from "../solve";
import { inWrittenOrder, type Labels, wholeBreakdown } from "./derive";

export interface Comparison {
  readonly plan: Planned;
  /** Null where that cannot be planned at all. */
  readonly writtenSec: number | null;
  readonly besideSec: number | null;
}

export function comparisonOf(of: Labels, options: SolveOptions = {}): Comparison {
  const readySec = (planned: Planned): number | null => (planned.kind === "planned" ? planned.readySec : null);
  return {
    plan: solve(wholeBreakdown(of), options),
    writtenSec: readySec(solve(inWrittenOrder(of, false), options)),
    besideSec: readySec(solve(inWrittenOrder(of, true), options)),
  };
}

/** The next client's set-up as it is written, with its waits; it begins when the station is free. */
export const nextSetUp = (of: Labels, options: SolveOptions = {}): Planned =>
  solve(inWrittenOrder(of, false, "setUp"), options);

/** Seconds until the station is free, and until it is set up again; `setUpSec` null where that cannot be planned. */
export function turnaroundOf(of: Labels, plan: Plan): { readonly freeSec: number; readonly setUpSec: number | null } {
  const next = nextSetUp(of);
  return { freeSec: plan.readySec, setUpSec: next.kind === "planned" ? plan.readySec + next.readySec : null };
}
