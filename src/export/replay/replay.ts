/**
 * Which rules a record is replayed with: those it names (src/session/rules.ts). Rules that are superseded stay runnable
 * under their version, so that an old record reads for ever as it did on its day.
 */
import type { LogEntry, Summary } from "../../log";
import { rulesVersions } from "../../session/rules";
import type { SessionInput } from "../../session/sessionInput";
import { summarise } from "../summarise";
import { follows } from "./follows";
import type { Breach } from "./rule";

export type Replayed =
  | { ok: true; summary: Summary }
  | ({ ok: false; at: number } & Breach)
  /** Rules that this app does not know. */
  | { ok: false; code: "unknown-rules"; expected: string; found: string };

export type Replay = (rules: string, input: SessionInput, entries: readonly LogEntry[]) => Replayed;

/** Rules 1.0.0 did not yet say what was done about a deviation; the notes are named from 1.3.0 on, the out of use from 1.4.0. */
function asSaidBy(rules: string, summary: Summary): Summary {
  if (rules === "1.0.0") return withoutNotes(withoutOutOfUse(withoutRemedies(summary)));
  if (rules === "1.1.0" || rules === "1.2.0") return withoutNotes(withoutOutOfUse(summary));
  return rules === "1.3.0" ? withoutOutOfUse(summary) : summary;
}

const withoutRemedies = (summary: Summary): Summary => ({
  ...summary,
  deviations: summary.deviations.map(({ done: _done, ...deviation }) => deviation),
});
const withoutNotes = ({ notes: _notes, ...summary }: Summary): Summary => summary;
const withoutOutOfUse = ({ outOfUse: _outOfUse, ...summary }: Summary): Summary => summary;

/** What a session comes to by the rules that it began with, which need not be today's. */
export const summaryBy = (rules: string, input: SessionInput, entries: readonly LogEntry[]): Summary =>
  asSaidBy(rules, summarise(input, entries, rules));

export const replay: Replay = (rules, input, entries) => {
  if (!rulesVersions.some((known) => known === rules)) {
    return { ok: false, code: "unknown-rules", expected: rulesVersions.join(" or "), found: rules };
  }
  const followed = follows(input, entries, rules);
  return followed.ok ? { ok: true, summary: asSaidBy(rules, followed.summary) } : followed;
};
