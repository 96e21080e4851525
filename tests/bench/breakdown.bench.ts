/**
 * What planning saves at the bundled stations: the plan against the written order and against waiting beside each
 * surface, with the labels as bundled and with others an artist may have; how long planning takes; how long a new plan
 * takes in the middle. Fails if a breakdown with bundled labels is not proved, or takes 200 ms or more at the median.
 *   npm run bench:breakdown -- [timed runs, 31]
 */
import type { Label, Protocol } from "../../src/session/protocol";
import { bundledProtocols } from "../../src/session/protocols";
import { comparisonOf, turnaroundOf } from "../../src/turnaround/breakdown/comparison";
import { type Labels, wholeBreakdown } from "../../src/turnaround/breakdown/derive";
import { plannerHere } from "../../src/turnaround/plannerPort";
import { solve } from "../../src/turnaround/solve";
import { beginBreakdown, relabelled, type Worked, workThrough } from "../support/artistAtWork";

const [runs = 31] = process.argv.slice(2).map(Number);
const barMs = 200;

type Variant = readonly [name: string, change: Partial<Label>];
const variants: readonly Variant[] = [
  ["label as bundled", {}],
  ["300 s, no re-apply", { contactSec: 300, reapplyWithinSec: null }],
  ["600 s, no re-apply", { contactSec: 600, reapplyWithinSec: null }],
  ["600 s, again in 240", { contactSec: 600, reapplyWithinSec: 240 }],
];

const labelsWith = (protocol: Protocol, change: Partial<Label>): Labels => ({
  protocol,
  labels: Object.fromEntries(
    protocol.products.map((p) => [p.id, p.use === "surfaceDisinfectant" ? { ...p.label, ...change } : p.label]),
  ),
});

console.log(
  `Node ${process.version}; ${runs} timed runs each. Minutes until the station is ready; "saved" against each.\n`,
);
row(["protocol", "label", "tasks", "plan", "written", "beside", "saved", "saved", "proved", "median ms", "max ms"]);
for (const protocol of bundledProtocols) {
  for (const [name, change] of variants) {
    const of = labelsWith(protocol, change);
    const { plan, writtenSec, besideSec } = comparisonOf(of);
    if (plan.kind !== "planned") {
      row([protocol.id, name, wholeBreakdown(of).tasks.length, plan.kind]);
      if (plan.kind === "impossible") console.log(`    ${plan.words}`);
      continue;
    }
    const times = timed(() => solve(wholeBreakdown(of)));
    row([
      protocol.id,
      name,
      wholeBreakdown(of).tasks.length,
      minutes(plan.readySec),
      minutes(writtenSec),
      minutes(besideSec),
      minutes(writtenSec === null ? null : writtenSec - plan.readySec),
      minutes(besideSec === null ? null : besideSec - plan.readySec),
      plan.proved ? "yes" : `gap ${plan.readySec - plan.lowerBoundSec} s`,
      median(times).toFixed(1),
      Math.max(...times).toFixed(1),
    ]);
    if (name === variants[0]?.[0] && (!plan.proved || median(times) >= barMs)) process.exitCode = 1;
  }
  const of = labelsWith(protocol, {});
  const { plan } = comparisonOf(of);
  if (plan.kind === "planned") {
    const { freeSec, setUpSec } = turnaroundOf(of, plan);
    console.log(
      `    station free after ${minutes(freeSec)}, set up again for the next client after ${minutes(setUpSec)}\n`,
    );
  }
}

console.log(`Walked on the real chart by an artist who takes the protocol's seconds and ends the step in hand before
wetting anything again: as written, asked when it is due; and led by the plan. Minutes until all is done, idle seconds.\n`);
row(["protocol", "label", "written", "idle s", "wetted", "led", "idle s", "wetted"]);
for (const protocol of bundledProtocols) {
  for (const [name, change] of variants) {
    const with_ = relabelled(protocol, change);
    const written = await workThrough(await beginBreakdown(with_));
    const led = await workThrough(await beginBreakdown(with_, plannerHere()));
    row([protocol.id, name, ...told(written), ...told(led)]);
  }
}

function told({ sec, idleSec, rewettings }: Worked): (string | number)[] {
  return [Number.isFinite(sec) ? minutes(sec) : "over 2 h", idleSec, rewettings];
}

function timed(work: () => unknown): number[] {
  for (let i = 0; i < 5; i++) work();
  return Array.from({ length: runs }, () => {
    const startMs = performance.now();
    work();
    return performance.now() - startMs;
  });
}

function minutes(sec: number | null): string {
  return sec === null ? "none" : `${Math.floor(sec / 60)}:${String(sec % 60).padStart(2, "0")}`;
}

function median(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function row(cells: readonly (string | number)[]): void {
  console.log(cells.map((cell, at) => (at < 2 ? String(cell).padEnd(21) : String(cell).padStart(9))).join(""));
}
