/**
 * A survivor judged without slices: every thing, the sharps and the hands followed together and exactly, over all that the
 * checker walks. Surfaces that are wet come to their time together: one that stays wet longer is only held back longer.
 */
import { handsAtStart } from "../../src/check/conduct";
import { graphOf, type Node } from "../../src/check/graph";
import { Station, sharpsName } from "../../src/check/slice";
import { follow, type Here, waited } from "../../src/check/step";
import type { Protocol } from "../../src/session/protocol";

export interface Walked {
  readonly isHarmless: boolean;
  readonly words: string;
}

/** @param most states at most; past it nothing is said to be harmless */
export function walkWhole(protocol: Protocol, most = 1_000_000): Walked {
  const graph = graphOf(protocol);
  const station = new Station(protocol);
  const names = [sharpsName, ...station.about.keys()];
  const seen = new Set<string>();
  const queue: { readonly node: number; readonly here: Here }[] = [];
  const arrive = (node: number, here: Here): void => {
    const key = `${node} ${here.hands} ${here.things.join(" ")}`;
    if (seen.has(key)) return;
    seen.add(key);
    queue.push({ node, here });
  };
  arrive(graph.start, { hands: station.hands.of(handsAtStart), things: names.map((n) => station.startOf(n)) });
  for (let visit = queue.pop(); visit !== undefined; visit = queue.pop()) {
    if (seen.size > most) return { isHarmless: false, words: `not all walked within ${most} states` };
    const node = graph.nodes[visit.node] as Node;
    for (const edge of node.out) {
      const { next, broken } = follow(station, names, node, edge, visit.here, [], true);
      if (broken.length > 0) return { isHarmless: false, words: `${broken.join(", ")} at ${node.list}` };
      for (const here of next) arrive(edge.to, here);
    }
    if (node.isBetween) arrive(node.id, allDone(station, names, visit.here));
  }
  return { isHarmless: true, words: `no rule is broken in any of the ${seen.size} states of the whole station` };
}

function allDone(station: Station, names: readonly string[], here: Here): Here {
  const [later] = waited(station, names, here);
  return later === undefined ? here : allDone(station, names, later);
}
