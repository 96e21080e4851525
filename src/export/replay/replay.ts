/**
 * Which rules a record is replayed with: those it names. Rules that are superseded stay here under their version, so that
 * an old record reads for ever as it did on its day.
 */
import type { LogEntry, Summary } from "../../log";
import type { SessionInput } from "../../session/sessionInput";
import { follows } from "./follows";
import type { Breach } from "./rule";

/** Written into every new header. Raise it with any change of rule or fold that reads an old record differently. */
export const currentRules = "1.0.0";

export type Replayed =
  | { ok: true; summary: Summary }
  | ({ ok: false; at: number } & Breach)
  /** Rules that this app does not know. */
  | { ok: false; code: "unknown-rules"; expected: string; found: string };

export type Replay = (rules: string, input: SessionInput, entries: readonly LogEntry[]) => Replayed;

const rulesByVersion: Readonly<Record<string, (input: SessionInput, entries: readonly LogEntry[]) => Replayed>> = {
  "1.0.0": follows,
};

export const replay: Replay = (rules, input, entries) => {
  const known = Object.hasOwn(rulesByVersion, rules) ? rulesByVersion[rules] : undefined;
  if (!known) {
    return { ok: false, code: "unknown-rules", expected: Object.keys(rulesByVersion).join(" or "), found: rules };
  }
  return known(input, entries);
};
