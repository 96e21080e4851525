/** A plan back as the walk of the breakdown: what lies behind, then the rest in the planned order, each step once. */
import type { Protocol, Step } from "../../session/protocol";
import type { Plan } from "../problem";
import { mayComeNext, ordersOf } from "./orders";

/**
 * @param behind steps passed, in the order in which they stand
 * @returns ids of the whole breakdown. Steps that are no task of the plan (glove changes) stand where the rules of order
 *   put them: before the first task that has to come after them.
 */
export function orderOf(protocol: Protocol, behind: readonly Step[], plan: Pick<Plan, "order">): string[] {
  const orders = ordersOf(protocol);
  const written = new Map(orders.steps.map((s, at) => [s.id, at]));
  const order = behind.map((s) => s.id);
  const done = new Set(behind.flatMap((s) => written.get(s.id) ?? []));
  const planned = plan.order.flatMap((id) => written.get(id) ?? []).filter((at) => !done.has(at));
  const isPlanned = new Set(planned);
  while (done.size < orders.steps.length) {
    const may = mayComeNext(orders, done);
    const next =
      may.find((at) => !isPlanned.has(at)) ?? planned.find((at) => !done.has(at) && may.includes(at)) ?? may[0];
    if (next === undefined) break;
    done.add(next);
    order.push(orders.steps[next]?.id ?? "");
  }
  return order;
}
