/**
 * Races the planner against HiGHS on the same problems, and shows how its work grows. Fails if a value differs, or if
 * the planner is not at least 50 times faster at the median of the races HiGHS finished.
 *   npm run bench:plan -- [races per size, 20] [HiGHS seconds per race, 600]
 * Both run one after the other in this process. HiGHS is told our ready time as its horizon and may not end later; it
 * would still find any plan that is sooner. Its time is that of `solve` alone, without writing or loading the model.
 */

import loadHighs from "highs";
import { randomBreakdown } from "../../src/turnaround/checks/randomBreakdown";
import type { Plan } from "../../src/turnaround/problem";
import { solve } from "../../src/turnaround/solve";
import { objectiveOf, timeGridModel } from "./highsModel";

const raceSizes = [12, 14, 16, 18, 20];
const growthSizes = [15, 20, 25, 30, 35, 40];
const growthBudget = { nodes: 60_000 };
const gridSec = 5;
const leastRatio = 50;

interface Race {
  readonly plan: Plan;
  readonly oursMs: number;
  readonly highsMs: number;
  readonly verdict: "equal" | "different" | "HiGHS stopped, none better";
}

const [perSize = 20, highsSec = 600] = process.argv.slice(2).map(Number);
const highs = await loadHighs();

// Both run some problems first that do not count, so that neither is timed while its code is still being compiled.
for (let seed = 101; seed <= 200; seed++) timed(16, seed);
for (let seed = 101; seed <= 103; seed++) race(12, seed);

console.log(`Node ${process.version}; ${perSize} races a size; HiGHS stops after ${highsSec} s.\n`);
const races: Race[] = [];
row(["size", "optimum s", "equal", "stopped", "ours med ms", "ours max ms", "HiGHS med ms", "HiGHS max ms", "ratio"]);
for (const size of raceSizes) {
  const here = Array.from({ length: perSize }, (_, seed) => race(size, seed + 1));
  races.push(...here);
  const ready = here.map((one) => one.plan.readySec);
  row([
    size,
    `${Math.min(...ready)}-${Math.max(...ready)}`,
    here.filter((one) => one.verdict === "equal").length,
    here.filter((one) => one.verdict === "HiGHS stopped, none better").length,
    ...spread(here.map((one) => one.oursMs)),
    ...spread(here.map((one) => one.highsMs)),
    fixed(median(here.map((one) => one.highsMs)) / median(here.map((one) => one.oursMs))),
  ]);
}
const ratio = median(races.map((one) => one.highsMs / one.oursMs));
const count = (verdict: Race["verdict"]) => races.filter((one) => one.verdict === verdict).length;
console.log(
  `\nAll ${races.length}: ${count("equal")} equal, ${count("different")} different, ${count("HiGHS stopped, none better")} where HiGHS`,
);
console.log(
  `stopped at its time with nothing better. Median of HiGHS time / our time: ${fixed(ratio)} (bar: ${leastRatio}).\n`,
);

console.log(
  `Growth, at most ${growthBudget.nodes} nodes a plan; "order" is the last tie-break, towards the written order.`,
);
row(["size", "proved", "order proved", "med ms", "max ms", "med nodes", "max nodes", "largest gap"]);
for (const size of growthSizes) {
  const runs = Array.from({ length: perSize }, (_, seed) => timed(size, seed + 1, growthBudget));
  const nodes = runs.map((one) => one.plan.nodes);
  row([
    size,
    `${runs.filter((one) => one.plan.proved).length}/${runs.length}`,
    `${runs.filter((one) => one.plan.writtenOrderProved).length}/${runs.length}`,
    ...spread(runs.map((one) => one.ms)),
    median(nodes),
    Math.max(...nodes),
    `${fixed(Math.max(...runs.map((one) => (100 * (one.plan.readySec - one.plan.lowerBoundSec)) / one.plan.readySec)))} %`,
  ]);
}
if (count("different") > 0 || ratio < leastRatio) process.exitCode = 1;

function race(size: number, seed: number): Race {
  const { plan, ms: oursMs } = timed(size, seed);
  const model = timeGridModel(randomBreakdown(size, seed, gridSec), gridSec, plan.readySec);
  const startMs = performance.now();
  const solution = highs.solve(model, { time_limit: highsSec, mip_rel_gap: 0, mip_abs_gap: 0.5, output_flag: false });
  const highsMs = performance.now() - startMs;
  const ours = objectiveOf(plan, gridSec);
  const theirs = solution.ObjectiveValue;
  if (solution.Status === "Optimal") {
    const verdict = plan.proved && Math.abs(theirs - ours) < 0.5 ? "equal" : "different";
    if (verdict === "different") console.log(`different: size ${size}, seed ${seed}: ours ${ours}, HiGHS ${theirs}`);
    return { plan, oursMs, highsMs, verdict };
  }
  const better = Number.isFinite(theirs) && theirs < ours - 0.5;
  if (solution.Status !== "Time limit reached")
    throw new Error(`size ${size}, seed ${seed}: HiGHS says ${solution.Status}`);
  return { plan, oursMs, highsMs, verdict: better ? "different" : "HiGHS stopped, none better" };
}

function timed(size: number, seed: number, budget?: { nodes: number }): { plan: Plan; ms: number } {
  const problem = randomBreakdown(size, seed, gridSec);
  const startMs = performance.now();
  const plan = solve(problem, budget ? { budget } : {});
  const ms = performance.now() - startMs;
  if (plan.kind !== "planned") throw new Error(`size ${size}, seed ${seed}: ${plan.kind}`);
  return { plan, ms };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

function fixed(value: number): string {
  return value.toFixed(value < 100 ? 1 : 0);
}

function spread(ms: readonly number[]): readonly [string, string] {
  return [fixed(median(ms)), fixed(Math.max(...ms))];
}

function row(cells: readonly (string | number)[]): void {
  console.log(cells.map((cell) => String(cell).padStart(13)).join(""));
}
