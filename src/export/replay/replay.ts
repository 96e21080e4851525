/**
 * Which rules a record is replayed with: those it names. Rules that are superseded stay here under their version, so that
 * an old record reads for ever as it did on its day.
 */
import type { LogEntry, Summary } from "../../log";
import type { SessionInput } from "../../session/sessionInput";
import { summarise } from "../summarise";
import { follows } from "./follows";
import type { Breach } from "./rule";

/** Written into every new header. Raise it with any change of rule or fold that reads an old record differently. */
export const currentRules = "1.1.0";

export type Replayed =
  | { ok: true; summary: Summary }
  | ({ ok: false; at: number } & Breach)
  /** Rules that this app does not know. */
  | { ok: false; code: "unknown-rules"; expected: string; found: string };

export type Replay = (rules: string, input: SessionInput, entries: readonly LogEntry[]) => Replayed;

const rulesByVersion: Readonly<Record<string, (input: SessionInput, entries: readonly LogEntry[]) => Replayed>> = {
  /** Did not yet say what was done about a deviation. */
  "1.0.0": (input, entries) => {
    const followed = follows(input, entries);
    return followed.ok ? { ok: true, summary: withoutRemedies(followed.summary) } : followed;
  },
  "1.1.0": follows,
};

const withoutRemedies = (summary: Summary): Summary => ({
  ...summary,
  deviations: summary.deviations.map(({ done: _done, ...deviation }) => deviation),
});

/** What a session comes to by the rules that it began with, which need not be today's. */
export const summaryBy = (rules: string, input: SessionInput, entries: readonly LogEntry[]): Summary =>
  rules === "1.0.0" ? withoutRemedies(summarise(input, entries)) : summarise(input, entries);

export const replay: Replay = (rules, input, entries) => {
  const known = Object.hasOwn(rulesByVersion, rules) ? rulesByVersion[rules] : undefined;
  if (!known) {
    return { ok: false, code: "unknown-rules", expected: Object.keys(rulesByVersion).join(" or "), found: rules };
  }
  return known(input, entries);
};
