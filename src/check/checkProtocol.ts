/**
 * Proves that a protocol never asks for what breaks a rule, or shows the shortest story that does. README.md: what is
 * explored, why no behaviour is hidden, and what "not proved" means.
 */
import type { SessionEvent } from "../../machines/session/vocabulary";
import type { Protocol } from "../session/protocol";
import { isHeldBackEverywhere } from "./anywhere";
import { type Graph, graphOf, type Move } from "./graph";
import { shortestWay, type Way } from "./path";
import { type Reached, reach } from "./reach";
import { type RuleId, ruleIds } from "./rules";
import { Station, sharpsName } from "./slice";
import { itemOf } from "./step";
import { storyOf } from "./story";
import { tell } from "./telling";

export interface Breach {
  readonly rule: RuleId;
  /** The step that asks for it; null where an event or the close does. */
  readonly step: string | null;
  /** Plain sentences, in order; the last says what is wrong. */
  readonly story: readonly string[];
  /** What is said to the real chart for it to happen. */
  readonly events: readonly SessionEvent[];
  readonly moves: readonly Move[];
}

export type Verdict =
  | { readonly verdict: "proved"; readonly states: number; readonly transitions: number; readonly ms: number }
  | { readonly verdict: "breach"; readonly breaches: readonly Breach[]; readonly states: number; readonly ms: number }
  | { readonly verdict: "notProved"; readonly why: string; readonly states: number; readonly ms: number };

export interface CheckOptions {
  /** Things followed together at most while a suspicion is looked into. Past it the answer is "not proved". */
  readonly mostWatched: number;
  /** States of one refined slice at most. */
  readonly mostStates: number;
  /** Stops at the first breach that is shown to happen. */
  readonly firstOnly: boolean;
  /** Told now and then, so that a screen can show that the work goes on. */
  readonly onProgress: (so: Progress) => void;
}

/** First the states are walked, and nobody knows how many there are; then each rule is looked into in turn. */
export interface Progress {
  readonly states: number;
  readonly rulesLooked: number;
  readonly rules: number;
}

const usual: CheckOptions = { mostWatched: 3, mostStates: 400_000, firstOnly: false, onProgress: () => undefined };

/** Never throws for a protocol that passed `readProtocol`. Milliseconds are of the wall clock, and only told. */
export function checkProtocol(protocol: Protocol, given: Partial<CheckOptions> = {}): Verdict {
  const options = { ...usual, ...given };
  const begun = performance.now();
  const graph = graphOf(protocol);
  const station = new Station(protocol);
  const so = (states: number, rulesLooked: number) =>
    options.onProgress({ states, rulesLooked, rules: ruleIds.length });
  const reached = reach(graph, station, (met) => so(met, 0));
  const anywhere = isHeldBackEverywhere(protocol);
  const breaches: Breach[] = [];
  const open: string[] = anywhere.ok ? [] : [anywhere.why];
  let states = reached.states;
  for (const [at, rule] of ruleIds.entries()) {
    so(states, at);
    const looked = lookInto(protocol, graph, station, reached, rule, options);
    states += looked.states;
    if (looked.breach) breaches.push(looked.breach);
    if (looked.why !== null) open.push(looked.why);
    if (breaches.length > 0 && options.firstOnly) break;
  }
  const ms = Math.round(performance.now() - begun);
  if (breaches.length > 0) {
    const shortest = breaches.toSorted((a, b) => a.moves.length - b.moves.length);
    return { verdict: "breach", breaches: shortest, states, ms };
  }
  const [why] = open;
  if (why !== undefined) return { verdict: "notProved", why, states, ms };
  return { verdict: "proved", states, transitions: reached.transitions, ms };
}

const stepIn = (move: Move | undefined): string | null =>
  move?.kind === "done" || move?.kind === "skipped" ? move.step.id : null;

interface Looked {
  readonly breach: Breach | null;
  readonly why: string | null;
  readonly states: number;
}

/** Every suspicion of one rule: shown on the real chart, or shown away by watching more, or left open. */
function lookInto(
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
  let why: string | null = null;
  let best: Breach | null = null;
  let states = 0;
  for (const { names, nodes } of bySlice.values()) {
    let watched = names;
    for (;;) {
      const way = shortestWay(graph, station, reached, watched, { rule, nodes }, options.mostStates);
      if (way === null) break;
      if (way === "too many") {
        why = `${rule}: ${watched.join(", ")} together have more than ${options.mostStates} states`;
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
          story: storyOf(protocol, moves, shown, told),
        };
        break;
      }
      const more = (told.stuck ? null : responsible(station, way, watched, told.touched)) ?? guardedBy(way, watched);
      if (more === null || watched.filter((n) => n !== sharpsName).length >= options.mostWatched) {
        why = told.stuck
          ? `${rule}: the chart does not follow the way to it`
          : `${rule}: it cannot be shown on the real chart, nor ruled out by watching ${watched.join(", ") || "the hands"}`;
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
