/**
 * Everything that may be so, slice by slice: the hands alone, the sharps, and each item by itself, all walked together.
 * What an unwatched item may be at a place is what its own slice has reached there so far; as that grows, the walks that
 * meet it there go on. The end is the least fixpoint, and it is finite: places, hands and a thing's states all are.
 */
import { handsAtStart } from "./conduct";
import type { Graph, Node } from "./graph";
import type { RuleId } from "./rules";
import { type Station, sharpsName } from "./slice";
import { follow, type Here, itemOf, thingsTold, toldTo, waited } from "./step";

/** A rule that some slice breaks at a place. Only a suspicion, until the real chart has shown it. */
export interface Suspicion {
  readonly rule: RuleId;
  readonly node: number;
  readonly names: readonly string[];
}

export interface Reached {
  readonly states: number;
  readonly transitions: number;
  readonly suspicions: readonly Suspicion[];
  /** What the item that the effect behind a node is done to may be there. */
  readonly mayBe: (node: number) => ReadonlySet<number>;
}

const none: ReadonlySet<number> = new Set();

interface Visit extends Here {
  readonly slice: number;
  readonly node: number;
}

/** A thing's state is a product of its parts (conduct.ts): fewer than this many, whatever the protocol. */
const mostThings = 32_768;
const mostHands = 256;

/** @param onStates told how many states have been met, every few thousand */
export function reach(graph: Graph, station: Station, onStates: (states: number) => void = () => undefined): Reached {
  const slices: (readonly string[])[] = [[], [sharpsName], ...[...station.about.keys()].map((id) => [id])];
  const meets = graph.nodes.map((n) => n.out.map(itemOf).find((id) => id !== null) ?? null);
  const seen = graph.nodes.map(() => new Set<number>());
  let states = 0;
  const at: Visit[][] = graph.nodes.map(() => []);
  const may: (Set<number> | undefined)[] = [];
  const queue: Visit[] = [];
  const suspicions = new Map<string, Suspicion>();
  let transitions = 0;

  const arrive = (slice: number, node: number, hands: number, things: readonly number[]): void => {
    const key = (slice * mostHands + hands) * mostThings + (things[0] ?? 0);
    const known = seen[node] as Set<number>;
    if (known.has(key)) return;
    known.add(key);
    states += 1;
    if (states % 8192 === 0) onStates(states);
    queue.push({ slice, node, hands, things });
  };
  const suspect = (names: readonly string[], node: number, broken: readonly RuleId[]): void => {
    for (const rule of broken) {
      const key = `${rule} ${node} ${names[0] ?? ""}`;
      if (!suspicions.has(key)) suspicions.set(key, { rule, node, names });
    }
  };
  const goOn = (visit: Visit, node: Node, others: Iterable<number>, only: boolean): void => {
    const names = slices[visit.slice] as readonly string[];
    for (const edge of node.out) {
      if (only && edge.effect === null) continue;
      // Most ways out of a place are told and move the hands alone: no need to look at more.
      if (edge.isTold && names[0] !== sharpsName) {
        const hands = toldTo(station, edge, visit.hands);
        if (hands === null) continue;
        transitions += 1;
        arrive(visit.slice, edge.to, hands, thingsTold(station, names, edge, visit.things));
        continue;
      }
      const { next, broken } = follow(station, names, node, edge, visit, others, names.length === 0);
      transitions += next.length;
      suspect(names, node.id, broken);
      for (const here of next) arrive(visit.slice, edge.to, here.hands, here.things);
    }
  };

  for (const [slice, names] of slices.entries()) {
    const things = names.map((n) => station.startOf(n));
    arrive(slice, graph.start, station.hands.of(handsAtStart), things);
  }
  for (let i = 0; i < queue.length; i += 1) {
    const visit = queue[i] as Visit;
    const node = graph.nodes[visit.node] as Node;
    const names = slices[visit.slice] as readonly string[];
    at[node.id]?.push(visit);
    goOn(visit, node, may[node.id] ?? none, false);
    if (node.isBetween) {
      const later = waited(station, names, visit);
      transitions += later.length;
      for (const here of later) arrive(visit.slice, node.id, here.hands, here.things);
    }
    const met = meets[node.id];
    if (met === null || met !== names[0]) continue;
    let known = may[node.id];
    if (!known) {
      known = new Set();
      may[node.id] = known;
    }
    const thing = visit.things[0] as number;
    if (known.has(thing)) continue;
    known.add(thing);
    // Walks that came here before the item was known to be so go on with it now.
    for (const earlier of at[node.id] ?? []) {
      if ((slices[earlier.slice] as readonly string[])[0] !== met) goOn(earlier, node, [thing], true);
    }
  }
  return {
    states,
    transitions,
    suspicions: [...suspicions.values()],
    mayBe: (node) => may[node] ?? none,
  };
}
