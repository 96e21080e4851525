/**
 * The order of work that has the station ready soonest, with its proof. Three stages: a good plan quickly; branch and
 * bound until nothing better can exist; then, among all equally good plans, the one closest to the written order.
 * The same problem and node budget give the same plan on every machine.
 */

import { type Beginning, nothingYet } from "./beginning";
import { bounder } from "./bounds";
import { firstPlan } from "./firstPlan";
import { compile, type Model } from "./model";
import { planOf } from "./planOf";
import type { Impossible, Planned, TurnaroundProblem } from "./problem";
import { refusal } from "./refusals";
import { no } from "./refusing";
import { type Bound, Search } from "./search";
import { type Value, worst, worthOf } from "./value";
import { WrittenOrder } from "./writtenOrder";

/** In nodes, which makes the answer reproducible, or in milliseconds of a clock handed in (monotonic). */
export type Budget = { readonly nodes: number } | { readonly ms: number; readonly nowMs: () => number };

export interface Progress {
  /** Infinity until a plan is known. */
  readonly readySec: number;
  readonly lowerBoundSec: number;
  readonly nodes: number;
}

export interface SolveOptions {
  /** Absent: 2,000,000 nodes. */
  readonly budget?: Budget;
  readonly onProgress?: (progress: Progress) => void;
}

const sliceNodes = 2_000;
const beamWidths = [1, 10, 60];

/**
 * Plans a turnaround.
 * @returns the plan, "optimal" (`proved`) only when it is; or why there is none; or `undecided` if the budget ended first.
 */
export function solve(problem: TurnaroundProblem, options: SolveOptions = {}): Planned {
  const planning = startPlanning(problem);
  if (planning.kind === "impossible") return planning;
  const budget = options.budget ?? { nodes: 2_000_000 };
  const startMs = "ms" in budget ? budget.nowMs() : 0;
  const left = () => ("ms" in budget ? budget.ms - (budget.nowMs() - startMs) : budget.nodes - planning.nodes);
  while (!planning.finished && left() > 0) {
    planning.step("ms" in budget ? sliceNodes : Math.min(sliceNodes, left()));
    options.onProgress?.(planning.progress);
  }
  return planning.answer();
}

/** Begins a planning that the caller steps, or refuses with the reason. */
export function startPlanning(problem: TurnaroundProblem): Planning | Impossible {
  return refusal(problem) ?? new Planning(compile(problem));
}

/** A planning under way. `step` until `finished`, or stop any time and take the `answer` so far. */
export class Planning {
  readonly kind = "planning";
  private readonly model: Model;
  private readonly bound: Bound;
  private readonly root: Beginning;
  private best: Beginning | undefined;
  private beams = [...beamWidths];
  private beamNodes = 0;
  private search: Search | undefined;
  private order: WrittenOrder | undefined;
  private readonly rootFits: boolean;

  constructor(model: Model) {
    this.model = model;
    this.bound = bounder(model);
    this.root = nothingYet(model);
    this.rootFits = this.bound(this.root);
  }

  get nodes(): number {
    return this.beamNodes + (this.search?.nodes ?? 0) + (this.order?.nodes ?? 0);
  }

  get finished(): boolean {
    if (!this.rootFits) return true;
    return this.proved && (this.best === undefined || this.order?.finished === true);
  }

  get progress(): Progress {
    return { readySec: this.value.ready, lowerBoundSec: this.lowerBoundSec, nodes: this.nodes };
  }

  /** Looks at about `nodes` more partial plans. */
  step(nodes: number): void {
    if (this.finished) return;
    const width = this.beams.shift();
    if (width !== undefined) this.beam(width);
    else if (!this.proved) this.prove(nodes);
    else if (this.best) {
      this.order ??= new WrittenOrder(this.model, this.bound, this.root, this.best);
      this.order.run(nodes);
      this.best = this.order.best;
    }
  }

  answer(): Planned {
    if (!this.best) {
      if (!this.finished) return { kind: "undecided", lowerBoundSec: this.lowerBoundSec, nodes: this.nodes };
      return no("no-order-fits", "Whatever the order, some task cannot start before its latest time.");
    }
    return planOf(this.model, this.best, {
      lowerBoundSec: this.lowerBoundSec,
      proved: this.proved,
      writtenOrderProved: this.finished,
      nodes: this.nodes,
    });
  }

  private get value(): Value {
    return this.best ? worthOf(this.best) : worst;
  }

  private get proved(): boolean {
    return this.beams.length === 0 && this.search?.finished === true;
  }

  private get lowerBoundSec(): number {
    const open = this.search ? Math.max(this.root.ready, this.search.openReady) : this.root.ready;
    return Math.min(this.value.ready, open);
  }

  /** Wider beams are only worth their time while the plan is not as good as the bound. */
  private beam(width: number): void {
    const found = firstPlan(this.model, this.bound, this.root, width, this.value);
    this.beamNodes += found.nodes;
    if (found.plan) this.best = found.plan;
    if (this.best && this.value.ready === this.root.ready && this.value.changes === this.root.changesAtLeast)
      this.beams = [];
  }

  private prove(nodes: number): void {
    this.search ??= new Search(this.model, this.bound, [this.root], this.value);
    this.search.run(nodes);
    if (this.search.best) this.best = this.search.best;
  }
}
