/** The age gate: whole years on a given day, counted by birthdays, never by dividing days. */
import { type Answer, answer, refuse } from "../sums/answer";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { addYears, type CivilDate, compareDates, showDate } from "./calendar";

export type AgeVerdict = {
  readonly allowed: boolean;
  readonly years: number;
  /** The first day on which the client is old enough. */
  readonly oldEnoughOn: CivilDate;
  readonly words: string;
};

/**
 * Years completed on `on`. Someone born on 29 February comes of age on 1 March in a year without one (United Kingdom,
 * from memory; also the later of the two readings, so it never lets anyone in early).
 */
export function ageOn(born: CivilDate, on: CivilDate): number {
  const years = on.year - born.year;
  return compareDates(on, addYears(born, years, "keepLonger")) < 0 ? years - 1 : years;
}

/**
 * @param on          the day at the studio, from `dateAt(nowMs, zone)`.
 * @param minimumYears from the place profile.
 * Refuses `born-later` and `age-unlikely` (over 120: a slip of the pen), which are not answers about the client.
 */
export function ageGate(
  born: CivilDate,
  on: CivilDate,
  minimumYears: number,
  phrases: SumPhrases = sumsEn,
): Answer<AgeVerdict, "born-later" | "age-unlikely"> {
  if (compareDates(born, on) > 0) return refuse("born-later", (say) => say.due.bornLater(showDate(born)));
  const years = ageOn(born, on);
  if (years > 120) return refuse("age-unlikely", (say) => say.due.ageUnlikely(showDate(born), years));
  const oldEnoughOn = addYears(born, minimumYears, "keepLonger");
  const allowed = years >= minimumYears;
  const words = allowed
    ? phrases.due.oldEnough(years, showDate(on), minimumYears)
    : phrases.due.tooYoung(years, showDate(on), minimumYears, showDate(oldEnoughOn));
  return answer({ allowed, years, oldEnoughOn, words });
}
