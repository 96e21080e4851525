/** From what was said and what was heard to figures: the same reckoning for the benchmark and for anyone's recordings. */
import type { CommandId } from "../../intent/phrases";
import type { Heard } from "../heard";
import { type Bar, type Figure, least, most } from "./figure";
import { bootstrapped, poissonUpper, shareUpper } from "./intervals";

/** One recording: what it holds, and what the ear made of it. */
export interface Outcome {
  readonly condition: string;
  /** Whose voice; intervals draw whole speakers. */
  readonly speaker: string;
  /** The phrase in it; null where there is none, and then whatever is acted on is a false action. */
  readonly said: CommandId | null;
  readonly acted: readonly CommandId[];
  /** How often it asked which of two was meant. */
  readonly asked: number;
  readonly soundMs: number;
}

export const outcomeOf = (
  of: Pick<Outcome, "condition" | "speaker" | "said" | "soundMs">,
  heard: readonly Heard[],
): Outcome => ({
  ...of,
  acted: heard.flatMap((one) => (one.kind === "understood" && one.permitted ? [one.command] : [])),
  asked: heard.filter(({ kind }) => kind === "unsure").length,
});

/** Heard, and nothing else heard. */
export const isRight = ({ said, acted }: Outcome): boolean =>
  said !== null && acted.length > 0 && acted.every((one) => one === said);
export const isWrong = ({ said, acted }: Outcome): boolean => acted.some((one) => one !== said);

/** Bars for the conditions they are set for: unseen voices, the phrases allowed now. */
const conditionBars: Readonly<Record<string, Bar>> = {
  clean: least(98),
  "buzz 15": least(95),
  "buzz 10": least(92),
  "babble 10": least(85),
  "music 10": least(95),
};
/** @param condition "buzz 10", "Buzz 10 dB" and "buzz 10dB" are one. */
export const barFor = (condition: string): Bar | null =>
  conditionBars[
    condition
      .trim()
      .toLowerCase()
      .replace(/\s*db$/, "")
  ] ?? null;

/**
 * Share heard right, over outcomes that all hold a phrase. The interval is the wider, on either side, of drawing speakers
 * again and of the exact one over clips: where all speakers are alike, or there is one, drawing again shows nothing.
 */
export function heardRight(what: string, outcomes: readonly Outcome[], bar: Bar | null, beside?: string): Figure {
  const speakers = [...new Set(outcomes.map(({ speaker }) => speaker))];
  const right = speakers.map((name) => outcomes.filter(({ speaker }) => speaker === name).map((one) => +isRight(one)));
  const [mean, low, high] = bootstrapped(right);
  const count = outcomes.filter(isRight).length;
  return {
    what,
    of: `${outcomes.length} clip${outcomes.length === 1 ? "" : "s"}${speakers.length < outcomes.length ? `, ${speakers.length} speakers` : ""}`,
    value: outcomes.length === 0 ? Number.NaN : 100 * mean,
    low: 100 * Math.min(low, 1 - shareUpper(outcomes.length - count, outcomes.length, 0.025)),
    high: 100 * Math.max(high, shareUpper(count, outcomes.length, 0.025)),
    unit: "%",
    bar,
    beside: beside ?? null,
  };
}

/** Share in which something else than what was said was acted on. */
export function actedWrong(what: string, outcomes: readonly Outcome[], bar: Bar | null, beside?: string): Figure {
  const wrong = outcomes.filter(isWrong).length;
  return {
    what,
    of: `${wrong} of ${outcomes.length} clips`,
    value: (100 * wrong) / outcomes.length,
    low: null,
    high: 100 * shareUpper(wrong, outcomes.length),
    unit: "%",
    bar,
    beside: beside ?? null,
  };
}

/** Actions an hour over outcomes that hold no phrase. */
export function falseActions(what: string, outcomes: readonly Outcome[], bar: Bar | null, beside?: string): Figure {
  const count = outcomes.reduce((sum, { acted }) => sum + acted.length, 0);
  const hours = outcomes.reduce((sum, { soundMs }) => sum + soundMs, 0) / 3_600_000;
  return {
    what,
    of: `${count} in ${hours.toFixed(2)} h`,
    value: count / hours,
    low: null,
    high: poissonUpper(count) / hours,
    unit: "/h",
    bar,
    beside: beside ?? null,
  };
}

/** Every condition in the order it first came: phrases first, then sound without any. */
export function figuresOf(outcomes: readonly Outcome[]): readonly Figure[] {
  const conditions = [...new Set(outcomes.map(({ condition }) => condition))];
  const phrases = outcomes.filter(({ said }) => said !== null);
  const others = outcomes.filter(({ said }) => said === null);
  const among = (of: readonly Outcome[], condition: string) => of.filter((one) => one.condition === condition);
  return [
    ...conditions
      .filter((condition) => among(phrases, condition).length > 0)
      .map((name) => heardRight(`heard right, ${name}`, among(phrases, name), barFor(name))),
    ...(phrases.length > 0 ? [actedWrong("another phrase acted on", phrases, most(0.5, "high"))] : []),
    ...conditions
      .filter((condition) => among(others, condition).length > 0)
      .map((name) => falseActions(`false actions, ${name}`, among(others, name), null)),
    ...(others.length > 0 ? [falseActions("false actions, all", others, most(0.3, "high"))] : []),
  ];
}
