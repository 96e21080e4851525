/**
 * Every order in which a breakdown may be walked: the written one, and whatever the rules of order leave free. The
 * plan chooses among these, the chart takes no other, the checker proves each, and a verifier knows them again.
 */
import type { Protocol, Step } from "../../session/protocol";
import { type OrderRuleId, orderRules } from "./rules";

export interface Orders {
  /** As written. */
  readonly steps: readonly Step[];
  /** For each step, by its place in writing, the places of those that have to come before it. */
  readonly before: readonly ReadonlySet<number>[];
  /** Sets of steps that may be done at some moment, as far as they are counted. 1 + steps: only the written order. */
  readonly moments: number;
}

/** More than this many half-done breakdowns are not all proved; a protocol that leaves so much free is walked as written. */
export const mostMoments = 400;

const known = new WeakMap<Protocol, Orders>();

export function ordersOf(protocol: Protocol): Orders {
  const before = known.get(protocol);
  if (before) return before;
  const made = makeOrders(protocol);
  known.set(protocol, made);
  return made;
}

function makeOrders(protocol: Protocol): Orders {
  const steps = protocol.breakdown;
  const roles = new Map(protocol.items.map((i) => [i.id, i.role]));
  const free = steps.map(
    (b, at) => new Set(steps.slice(0, at).flatMap((a, i) => (reasonBetween(a, b, roles) === null ? [] : [i]))),
  );
  const moments = countMoments(free);
  if (moments <= mostMoments) return { steps, before: free, moments };
  const written = steps.map((_, at) => new Set(Array.from({ length: at }, (_one, i) => i)));
  return { steps, before: written, moments: steps.length + 1 };
}

/** The rule that keeps `a`, written first, before `b`; null if they may be swapped. */
export function reasonBetween(
  a: Step,
  b: Step,
  roles: ReadonlyMap<string, Protocol["items"][number]["role"]>,
): OrderRuleId | null {
  const ids = Object.keys(orderRules) as OrderRuleId[];
  return ids.find((id) => orderRules[id].holds(a, b, (item) => roles.get(item))) ?? null;
}

/** Steps that may come next when these are done: all that has to come before them is. In written order. */
export const mayComeNext = ({ before }: Orders, done: ReadonlySet<number>): number[] =>
  before.flatMap((needed, at) => (!done.has(at) && [...needed].every((i) => done.has(i)) ? [at] : []));

/** Walks the sets of steps that may be done, from none to all, each once. Stops early past the most that are proved. */
export function countMoments(before: Orders["before"]): number {
  const orders: Orders = { steps: [], before, moments: 0 };
  let now = new Map<string, ReadonlySet<number>>([["", new Set()]]);
  let count = 0;
  while (now.size > 0 && count <= mostMoments) {
    count += now.size;
    const next = new Map<string, ReadonlySet<number>>();
    for (const done of now.values()) {
      for (const step of mayComeNext(orders, done)) {
        const more = new Set([...done, step]);
        next.set([...more].sort((a, b) => a - b).join(" "), more);
      }
    }
    now = next;
  }
  return count;
}

/** Whether the ids are the breakdown's steps, each once, in an order that the rules allow. */
export function isAllowedOrder(protocol: Protocol, ids: readonly string[]): boolean {
  const { steps, before } = ordersOf(protocol);
  const written = new Map(steps.map((s, at) => [s.id, at]));
  if (ids.length !== steps.length) return false;
  const done = new Set<number>();
  for (const id of ids) {
    const at = written.get(id);
    if (at === undefined || done.has(at)) return false;
    for (const needed of before[at] ?? []) if (!done.has(needed)) return false;
    done.add(at);
  }
  return true;
}
