/**
 * Proves that a protocol never asks for what breaks a rule, or shows the shortest story that does. README.md: what is
 * explored, why no behaviour is hidden, and what "not proved" means.
 */
import type { SessionEvent } from "../../machines/session/vocabulary";
import type { Protocol } from "../session/protocol";
import { isHeldBackEverywhere } from "./anywhere";
import { type Graph, graphOf, type Move } from "./graph";
import { reach } from "./reach";
import { type RuleId, ruleIds } from "./rules";
import { Station } from "./slice";
import { lookInto } from "./suspicion";
import type { Why } from "./why";

export interface Breach {
  readonly rule: RuleId;
  /** The step that asks for it; null where an event or the close does. */
  readonly step: string | null;
  /** What is said to the real chart for it to happen. */
  readonly events: readonly SessionEvent[];
  /** What is told and done, the last of which breaks the rule. In words: `storyOf`. */
  readonly moves: readonly Move[];
}

export type Verdict =
  | { readonly verdict: "proved"; readonly states: number; readonly transitions: number; readonly ms: number }
  | { readonly verdict: "breach"; readonly breaches: readonly Breach[]; readonly states: number; readonly ms: number }
  | { readonly verdict: "notProved"; readonly why: Why; readonly states: number; readonly ms: number };

export interface CheckOptions {
  /** Things followed together at most while a suspicion is looked into. Past it the answer is "not proved". */
  readonly mostWatched: number;
  /** States of one refined slice at most. */
  readonly mostStates: number;
  /** Stops at the first breach that is shown to happen, looked for without slips first; it may not be the shortest. */
  readonly firstOnly: boolean;
  /** False: nothing is told in the middle of lists and flows. Ten times as quick; a breach counts, but nothing is proved. */
  readonly slips: boolean;
  /** Told now and then, so that a screen can show that the work goes on. */
  readonly onProgress: (so: Progress) => void;
}

/** First the states are walked, and nobody knows how many there are; then each rule is looked into in turn. */
export interface Progress {
  readonly states: number;
  readonly rulesLooked: number;
  readonly rules: number;
}

const usual: CheckOptions = {
  mostWatched: 3,
  mostStates: 400_000,
  firstOnly: false,
  slips: true,
  onProgress: () => undefined,
};

/** Never throws for a protocol that passed `readProtocol`. Milliseconds are of the wall clock, and only told. */
export function checkProtocol(protocol: Protocol, given: Partial<CheckOptions> = {}): Verdict {
  const options = { ...usual, ...given };
  const begun = performance.now();
  const ms = () => Math.round(performance.now() - begun);
  if (options.firstOnly && options.slips) {
    const part = checkProtocol(protocol, { ...options, slips: false });
    if (part.verdict === "breach") return part;
  }
  const { breaches, open, states, transitions } = looked(protocol, graphOf(protocol, options.slips), options);
  if (breaches.length > 0) {
    const shortest = breaches.toSorted((a, b) => a.moves.length - b.moves.length);
    return { verdict: "breach", breaches: shortest, states, ms: ms() };
  }
  const anywhere = isHeldBackEverywhere(protocol);
  const why: Why | undefined = !options.slips ? { code: "onlyAPart" } : anywhere.ok ? open[0] : anywhere.why;
  if (why !== undefined) return { verdict: "notProved", why, states, ms: ms() };
  return { verdict: "proved", states, transitions, ms: ms() };
}

/** All of this graph walked, and each rule looked into. */
function looked(protocol: Protocol, graph: Graph, options: CheckOptions) {
  const station = new Station(protocol);
  const so = (states: number, rulesLooked: number) =>
    options.onProgress({ states, rulesLooked, rules: ruleIds.length });
  const reached = reach(graph, station, (met) => so(met, 0));
  const breaches: Breach[] = [];
  const open: Why[] = [];
  let states = reached.states;
  for (const [at, rule] of ruleIds.entries()) {
    so(states, at);
    const found = lookInto(protocol, graph, station, reached, rule, options);
    states += found.states;
    if (found.breach) breaches.push(found.breach);
    if (found.why !== null) open.push(found.why);
    if (breaches.length > 0 && options.firstOnly) break;
  }
  return { breaches, open, states, transitions: reached.transitions };
}
