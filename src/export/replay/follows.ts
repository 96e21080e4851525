/** Replays the facts of a record through the rules of the session and stops at the first that does not follow. */
import type { LogEntry, Summary } from "../../log";
import { credit, fold } from "../../session/fold";
import type { SessionInput } from "../../session/sessionInput";
import { worldAtStart } from "../../session/world";
import { summing } from "../summarise";
import { clockRules } from "./clockRules";
import { gateRules } from "./gateRules";
import type { Breach, Rule, Seen } from "./rule";
import { timeRules, watchedWithinLife } from "./timeRules";
import { walkRules } from "./walkRules";

export type Followed = { ok: true; summary: Summary } | ({ ok: false; at: number } & Breach);

/**
 * @param version of the rules that the record names
 * @returns what the session comes to, or the number of the first entry that does not follow, and why. Never throws.
 */
export function follows(input: SessionInput, entries: readonly LogEntry[], version: string): Followed {
  const rules: readonly Rule[] = [...timeRules, watchedWithinLife(), ...clockRules, ...walkRules, ...gateRules];
  const facts = entries.map((entry) => entry.fact);
  const sum = summing(input);
  let before = worldAtStart(input, version);
  let atCause = before;
  for (const [i, entry] of entries.entries()) {
    const { fact } = entry;
    if (fact.cause !== before.cause) atCause = before;
    const after = fold(input, before, fact);
    const seen: Seen = {
      input,
      entry,
      fact,
      before,
      credited: credit(before, fact.witnessedMs),
      after,
      atCause,
      get rest() {
        return restOfCause(facts, i);
      },
      previous: entries[i - 1] ?? null,
    };
    for (const rule of rules) {
      const broken = rule(seen);
      if (broken) return { ok: false, ...placed(entries, i, broken) };
    }
    sum.take(seen);
    before = after;
  }
  return { ok: true, summary: sum.summary() };
}

/** A fact that is missing is told by the one that stands in its place, or else by the last. */
function placed(entries: readonly LogEntry[], i: number, { later = 0, ...breach }: Breach) {
  return { at: entries[i + later]?.n ?? entries.length, ...breach };
}

function restOfCause<F extends { cause: number }>(facts: readonly F[], from: number): readonly F[] {
  const cause = facts[from]?.cause;
  let end = from;
  while (facts[end]?.cause === cause && end < facts.length) end++;
  return facts.slice(from, end);
}
