/** `gloveside plan PROTOCOL.json`: the breakdown planned by the labels in the file, beside the ways it could be done else. */
import type { Protocol } from "../session/protocol";
import { comparisonOf, nextSetUp } from "./breakdown/comparison";
import { type Labels, wholeBreakdown } from "./breakdown/derive";
import { orderOf } from "./breakdown/orderOf";
import { clockTime, planText } from "./planText";
import type { Plan, Planned, TurnaroundProblem } from "./problem";

export interface ProtocolPlan {
  readonly problem: TurnaroundProblem;
  readonly answer: Planned;
  /** Every step of the breakdown in the planned order; null where there is no plan. */
  readonly order: readonly string[] | null;
  readonly writtenSec: number | null;
  readonly besideSec: number | null;
  /** The next client's set-up, begun when the station is free; null where not asked for or not to be planned. */
  readonly nextSetUpSec: number | null;
}

export function planProtocol(protocol: Protocol, nodes: number, withNext: boolean): ProtocolPlan {
  const of: Labels = { protocol, labels: Object.fromEntries(protocol.products.map((p) => [p.id, p.label])) };
  const budget = { budget: { nodes } };
  const { plan, writtenSec, besideSec } = comparisonOf(of, budget);
  const next = withNext && plan.kind === "planned" ? nextSetUp(of, budget) : null;
  return {
    problem: wholeBreakdown(of),
    answer: plan,
    order: plan.kind === "planned" ? orderOf(protocol, [], plan) : null,
    writtenSec,
    besideSec,
    nextSetUpSec: next?.kind === "planned" && plan.kind === "planned" ? plan.readySec + next.readySec : null,
  };
}

export function protocolPlanText(protocol: Protocol, found: ProtocolPlan, plan: Plan): string {
  const { problem, order, writtenSec, besideSec, nextSetUpSec } = found;
  const written = protocol.breakdown.map((s) => s.id);
  const isWritten = order?.every((id, at) => id === written[at]) === true;
  const other = (name: string, sec: number | null): string[] =>
    sec === null ? [] : [`  ${name.padEnd(26)}${clockTime(sec).padStart(7)}   saved ${clockTime(sec - plan.readySec)}`];
  return [
    planText(problem, plan).trimEnd(),
    isWritten ? "The written order is kept." : "The plan walks the list in another order than it is written in.",
    "",
    ...other("as written", writtenSec),
    ...other("waiting beside each surface", besideSec),
    ...(nextSetUpSec === null ? [] : [`  next client set up at ${clockTime(nextSetUpSec)}`]),
    "Contact and re-apply times are those in the file; the product label decides.",
    "",
  ].join("\n");
}
