/** What one rule sees of a replay, and what it may answer. A record whose facts break one did not come from the rules. */
import type { LogEntry } from "../../log";
import type { SessionFact } from "../../session/fact";
import type { SessionInput } from "../../session/sessionInput";
import type { World } from "../../session/world";

/** Everything a replay can find wrong; each has its rule in this folder. */
export const breachCodes = [
  "not-begun",
  "after-close",
  "cause-order",
  "time-ran-back",
  "time-not-watched",
  "gap-left-out",
  "label-differs",
  "clock-state",
  "credit-differs",
  "ready-early",
  "short-by-differs",
  "step-differs",
  "plan-not-sound",
  "step-facts-differ",
  "not-skippable",
  "event-facts-differ",
  "phase-order",
  "gate-not-met",
  "count-differs",
  "undo-differs",
  "exposure-order",
  "close-differs",
  "summary-differs",
] as const;
export type BreachCode = (typeof breachCodes)[number];

export type Breach = { code: BreachCode; expected: string; found: string };

export interface Seen {
  readonly input: SessionInput;
  readonly entry: LogEntry;
  readonly fact: SessionFact;
  /** What was so before this fact, and the same with the time it says was watched. */
  readonly before: World;
  readonly credited: World;
  readonly after: World;
  /** What was so before the first fact of the same event. */
  readonly atCause: World;
  /** This fact and those after it that belong to the same event. */
  readonly rest: readonly SessionFact[];
  readonly previous: LogEntry | null;
}

/** @returns what is wrong, or null. Pure; never throws for a record of the right shape. */
export type Rule = (seen: Seen) => Breach | null;

export const breach = (code: BreachCode, expected: unknown, found: unknown): Breach => ({
  code,
  expected: inWords(expected),
  found: inWords(found),
});

const inWords = (value: unknown): string => (typeof value === "string" ? value : (JSON.stringify(value) ?? "nothing"));

/** Stamps, and what is judged by a range of its own. */
const apart: ReadonlySet<string> = new Set(["witnessedMs", "cause", "shortByMs"]);

/** The facts that follow must begin with these, whatever their stamps. */
export function mustBegin(code: BreachCode, rest: readonly object[], expected: readonly object[]): Breach | null {
  for (const [i, wanted] of expected.entries()) {
    const found = rest[i];
    if (found === undefined || !isSame(wanted, found)) return breach(code, bare(wanted), found && bare(found));
  }
  return null;
}

/** Facts of a walk hold only texts, numbers and null. */
function isSame(wanted: object, found: object): boolean {
  const theirs = found as Record<string, unknown>;
  const names = Object.keys(wanted).filter((name) => !apart.has(name));
  const same = names.every((name) => (wanted as Record<string, unknown>)[name] === theirs[name]);
  return same && Object.keys(found).filter((name) => !apart.has(name)).length === names.length;
}

const bare = (fact: object): object => Object.fromEntries(Object.entries(fact).filter(([name]) => !apart.has(name)));
