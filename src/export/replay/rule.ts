/** What one rule sees of a replay, and what it may answer. A record whose facts break one did not come from the rules. */
import type { LogEntry } from "../../log";
import type { SessionFact } from "../../session/fact";
import type { SessionInput } from "../../session/sessionInput";
import type { World } from "../../session/world";
import { firstDifference } from "../firstDifference";

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

export type Breach = {
  code: BreachCode;
  expected: string;
  found: string;
  /** How many facts behind the one that the rule looked at; left out where it is that one. */
  later?: number;
};

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

type Named = { readonly type: string };

/** The facts from `from` on must be these, whatever their stamps. */
export function mustBegin(
  code: BreachCode,
  rest: readonly Named[],
  expected: readonly Named[],
  from = 0,
): Breach | null {
  for (const [i, wanted] of expected.entries()) {
    const found = rest[from + i];
    if (found === undefined || !isSame(wanted, found)) return { ...differing(code, wanted, found), later: from + i };
  }
  return null;
}

/** Of one kind, the first thing that differs says more than the whole of both. */
function differing(code: BreachCode, wanted: Named, found: Named | undefined): Breach {
  if (found === undefined || found.type !== wanted.type) return breach(code, bare(wanted), found && bare(found));
  const difference = firstDifference(bare(wanted), bare(found)) ?? { expected: "", found: "" };
  return breach(code, `${wanted.type} with ${difference.expected}`, `${found.type} with ${difference.found}`);
}

/** Facts of a walk hold only texts, numbers and null. */
function isSame(wanted: object, found: object): boolean {
  const theirs = found as Record<string, unknown>;
  const names = Object.keys(wanted).filter((name) => !apart.has(name));
  const same = names.every((name) => (wanted as Record<string, unknown>)[name] === theirs[name]);
  return same && Object.keys(found).filter((name) => !apart.has(name)).length === names.length;
}

const bare = (fact: object): object => Object.fromEntries(Object.entries(fact).filter(([name]) => !apart.has(name)));
