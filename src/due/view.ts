/** The due-times screen as functions: typed fields in, rows out. What cannot be read is said, not guessed. */
import type { PlaceProfile } from "../places/line";
import { placeName } from "../places/name";
import { retentionRules, ruleOf } from "../places/profiles";
import { type Answer, refuse } from "../sums/answer";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { type AgeVerdict, ageGate } from "./age";
import { type CivilDate, parseDate, showDate } from "./calendar";
import { exposureDue, showExposureDue, standing } from "./exposure";
import type { ExposureWords } from "./exposureWords";
import { type KeptRecord, type RetentionDue, retentionDue } from "./retention";

export type AgeForm = { readonly born: string; readonly on: CivilDate; readonly place: PlaceProfile };

/** Refuses `age-not-known-here` where the chosen place gives no minimum: the studio must fill it in first. */
export function ageView(
  form: AgeForm,
  phrases: SumPhrases = sumsEn,
): Answer<AgeVerdict, "bad-date" | "born-later" | "age-unlikely" | "age-not-known-here"> {
  const born = parseDate(form.born);
  if (!born.ok) return born;
  const rule = ruleOf(form.place, "age");
  if (!rule) return refuse("age-not-known-here", (say) => say.due.ageNotKnown(placeName(form.place, say)));
  return ageGate(born.value, form.on, rule.minimumYears, phrases);
}

export type ExposureRow = {
  readonly id: string;
  readonly words: string;
  readonly standing: ReturnType<typeof standing>;
};

/** Follow-up times after an exposure, soonest first, with whether each is open, ahead or passed at `nowMs`. */
export function exposureRows(
  exposedAtMs: number,
  zone: string,
  nowMs: number,
  words?: ExposureWords,
): readonly ExposureRow[] {
  return exposureDue(exposedAtMs, zone).map((due) => ({
    id: due.rule.id,
    words: showExposureDue(due, zone, words),
    standing: standing(due, nowMs),
  }));
}

export type RetentionRow = {
  readonly recordId: string;
  readonly kind: string;
  readonly until: string;
  readonly state: RetentionDue["state"];
  readonly says: string;
};

/** What may be deleted by hand at this place, soonest first. Nothing is ever deleted from here. */
export function retentionRows(
  records: readonly KeptRecord[],
  place: PlaceProfile,
  today: CivilDate,
  phrases: SumPhrases = sumsEn,
): readonly RetentionRow[] {
  const say = phrases.due;
  return retentionDue(records, retentionRules(place), today).map((due) => ({
    recordId: due.record.id,
    kind: say.records[due.record.kind],
    until: due.keepUntil ? showDate(due.keepUntil) : say.notKnownHere,
    state: due.state,
    says: say.keeps[due.state],
  }));
}
