/**
 * How long records are kept: a table by kind of record, because the rules differ by kind and place (California keeps
 * a steriliser log three years and shreds a health questionnaire after two). Nothing here deletes anything.
 */
import { type CivilDate, compareDates } from "./calendar";
import { addSpan, type CalendarSpan } from "./duration";

export const recordKinds = [
  "client-record",
  "health-questionnaire",
  "steriliser-log",
  "biological-test-log",
  "pre-sterilised-purchase",
  "training-record",
  "staff-medical-record",
  "sharps-injury-log",
  "hazardous-waste-note",
  "waste-transfer-note",
] as const;
export type RecordKind = (typeof recordKinds)[number];

export type RetentionRule = {
  readonly keep: CalendarSpan;
  /** What the time runs from. */
  readonly from: "record date" | "end of employment" | "use" | "end of the year";
};

/** The last day on which the record must be there. A day that does not exist moves on to the next: keep longer. */
export function keepUntil(rule: RetentionRule, startsOn: CivilDate): CivilDate {
  const start = rule.from === "end of the year" ? { year: startsOn.year, month: 12, day: 31 } : startsOn;
  return addSpan(start, rule.keep, "keepLonger");
}

export type KeptRecord = { readonly id: string; readonly kind: RecordKind; readonly startsOn: CivilDate };

export type RetentionDue = {
  readonly record: KeptRecord;
  /** null where no rule is known for this kind: then it is kept. */
  readonly keepUntil: CivilDate | null;
  readonly state: "keep" | "may be deleted" | "keep: no rule known";
};

/** What may be deleted by hand and what not yet, soonest first; records without a rule come last and stay. */
export function retentionDue(
  records: readonly KeptRecord[],
  rules: Partial<Readonly<Record<RecordKind, RetentionRule>>>,
  today: CivilDate,
): readonly RetentionDue[] {
  return records
    .map((record): RetentionDue => {
      const rule = rules[record.kind];
      if (!rule) return { record, keepUntil: null, state: "keep: no rule known" };
      const last = keepUntil(rule, record.startsOn);
      return { record, keepUntil: last, state: compareDates(today, last) > 0 ? "may be deleted" : "keep" };
    })
    .sort((a, b) => rank(a) - rank(b));
}

function rank(due: RetentionDue): number {
  return due.keepUntil ? compareDates(due.keepUntil, { year: 1970, month: 1, day: 1 }) : Number.MAX_SAFE_INTEGER;
}
