/** Any order in which a breakdown may be walked, for properties: at each place one of the steps that may come next. */
import fc from "fast-check";
import type { Protocol } from "../../session/protocol";
import { mayComeNext, ordersOf } from "../breakdown/orders";

/** @param from ids of steps that lie behind. Numbers pick among what may come next. */
export function orderBy(protocol: Protocol, picks: readonly number[], from: readonly string[] = []): string[] {
  const orders = ordersOf(protocol);
  const order = [...from];
  const done = new Set(from.map((id) => orders.steps.findIndex((s) => s.id === id)));
  while (order.length < orders.steps.length) {
    const may = mayComeNext(orders, done);
    const next = may[(picks[order.length % picks.length] ?? 0) % may.length] as number;
    done.add(next);
    order.push(orders.steps[next]?.id as string);
  }
  return order;
}

export const anyPicks = fc.array(fc.nat({ max: 30 }), { minLength: 8, maxLength: 24 });
