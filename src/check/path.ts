/** The shortest way, in things told and done, to a suspicion within one slice. */
import { handsAtStart } from "./conduct";
import type { Edge, Graph, Move, Node } from "./graph";
import type { Reached } from "./reach";
import type { RuleId } from "./rules";
import type { Station } from "./slice";
import { follow, type Here, waited } from "./step";

export interface Stop {
  readonly edge: Edge;
  /** Hands after the edge. */
  readonly hands: number;
}

export interface Way {
  readonly stops: readonly Stop[];
  readonly moves: readonly Move[];
}

interface Visit extends Here {
  readonly node: number;
  readonly from: Visit | null;
  readonly edge: Edge | null;
}

/**
 * @param most gives up after this many states: a slice of three things can be large
 * @returns the way; null if there is none in this slice; "too many" if it was given up
 */
export function shortestWay(
  graph: Graph,
  station: Station,
  reached: Reached,
  names: readonly string[],
  target: { rule: RuleId; nodes: ReadonlySet<number> },
  most: number,
): Way | null | "too many" {
  const seen = new Set<string>();
  let now: Visit[] = [];
  let next: Visit[] = [];
  const arrive = (visit: Visit, costs: boolean): void => {
    (costs ? next : now).push(visit);
  };
  const start = { hands: station.hands.of(handsAtStart), things: names.map((n) => station.startOf(n)) };
  arrive({ ...start, node: graph.start, from: null, edge: null }, false);
  while (now.length > 0) {
    for (let i = 0; i < now.length; i += 1) {
      const visit = now[i] as Visit;
      const key = `${visit.node} ${visit.hands} ${visit.things.join(" ")}`;
      if (seen.has(key)) continue;
      seen.add(key);
      if (seen.size > most) return "too many";
      const node = graph.nodes[visit.node] as Node;
      for (const edge of node.out) {
        const { next: after, broken } = follow(station, names, node, edge, visit, reached.mayBe(node.id), true);
        if (broken.includes(target.rule) && target.nodes.has(node.id)) return wayTo(graph, visit, node, edge);
        for (const here of after) {
          const { hands, things } = here;
          arrive({ hands, things, node: edge.to, from: visit, edge }, edge.move !== null);
        }
      }
      if (node.isBetween) {
        for (const here of waited(station, names, visit))
          arrive({ ...here, node: node.id, from: visit, edge: null }, false);
      }
    }
    now = next;
    next = [];
  }
  return null;
}

/** Edges from the start; the last move is the one that would break the rule, even if only part of it is reached. */
function wayTo(graph: Graph, last: Visit, node: Node, edge: Edge): Way {
  const stops: Stop[] = [];
  for (let v: Visit | null = last; v !== null; v = v.from) if (v.edge) stops.unshift({ edge: v.edge, hands: v.hands });
  const moves = [...stops.map((s) => s.edge), edge].flatMap((e) => e.move ?? []);
  const ending = edge.move ?? lastMove(node) ?? lastMove(graph.nodes[edge.to] as Node);
  return { stops, moves: edge.move || ending === null ? moves : [...moves, ending] };
}

/** The effect stands in the middle of a step, or an end comes by itself: what is being done there, or behind it. */
const lastMove = (node: Node): Move | null => (node.step ? { kind: "done", step: node.step } : null);
