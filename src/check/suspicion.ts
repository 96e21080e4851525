/** Every suspicion of one rule: shown on the real chart, or shown away by watching more, or left open. */
import type { Protocol } from "../session/protocol";
import type { Breach, CheckOptions } from "./checkProtocol";
import type { Graph, Move } from "./graph";
import { shortestWay, type Way } from "./path";
import type { Reached } from "./reach";
import type { RuleId } from "./rules";
import { type Station, sharpsName } from "./slice";
import { itemOf } from "./step";
import { tell } from "./telling";
import type { Why } from "./why";

const stepIn = (move: Move | undefined): string | null =>
  move?.kind === "done" || move?.kind === "skipped" ? move.step.id : null;

export interface Looked {
  readonly breach: Breach | null;
  readonly why: Why | null;
  readonly states: number;
}

export function lookInto(
  protocol: Protocol,
  graph: Graph,
  station: Station,
  reached: Reached,
  rule: RuleId,
  options: CheckOptions,
): Looked {
  const bySlice = new Map<string, { names: readonly string[]; nodes: Set<number> }>();
  for (const s of reached.suspicions) {
    if (s.rule !== rule) continue;
    const slice = bySlice.get(s.names.join()) ?? { names: s.names, nodes: new Set<number>() };
    slice.nodes.add(s.node);
    bySlice.set(s.names.join(), slice);
  }
  let why: Why | null = null;
  let best: Breach | null = null;
  let states = 0;
  for (const { names, nodes } of bySlice.values()) {
    let watched = names;
    for (;;) {
      const way = shortestWay(graph, station, reached, watched, { rule, nodes }, options.mostStates);
      if (way === null) break;
      if (way === "too many") {
        why = { code: "tooMany", rule, names: watched, most: options.mostStates };
        break;
      }
      states += way.stops.length;
      if (best && way.moves.length >= best.moves.length) break;
      const told = tell(protocol, way.moves);
      if (told.broken.length > 0) {
        const moves = way.moves.slice(0, told.at + 1);
        const shown = told.broken.includes(rule) ? rule : (told.broken[0] as RuleId);
        best = {
          rule: shown,
          step: stepIn(moves.at(-1)),
          moves,
          events: told.events,
        };
        break;
      }
      const more = (told.stuck ? null : responsible(station, way, watched, told.touched)) ?? guardedBy(way, watched);
      if (more === null || watched.filter((n) => n !== sharpsName).length >= options.mostWatched) {
        why = told.stuck ? { code: "notFollowed", rule } : { code: "leftOpen", rule, names: watched };
        break;
      }
      watched = [...watched, more];
    }
    if (best && options.firstOnly) break;
  }
  return { breach: best, why: best ? null : why, states };
}

/** The chart does not follow where a way is passed with other sharps out than there are: then they are followed, too. */
const guardedBy = (way: Way, watched: readonly string[]): string | null =>
  !watched.includes(sharpsName) && way.stops.some(({ edge }) => edge.sharps !== null) ? sharpsName : null;

/** The thing that the hands met where the real hands and the suspected ones part. */
function responsible(
  station: Station,
  way: Way,
  watched: readonly string[],
  touched: readonly { readonly item: string | null; readonly hands: unknown }[],
): string | null {
  const acted = way.stops.filter((s) => s.edge.effect !== null);
  for (const [i, stop] of acted.entries()) {
    const real = touched[i];
    if (real && JSON.stringify(station.hands.at(stop.hands)) === JSON.stringify(real.hands)) continue;
    const item = itemOf(stop.edge);
    return item !== null && !watched.includes(item) ? item : null;
  }
  return null;
}
