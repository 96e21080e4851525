/**
 * How long after: hours are elapsed time, days and longer are the calendar on the studio's wall. Seven days after
 * 10:00 is 10:00, also when the clocks change between.
 */
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { addDays, addMonths, type CivilDate, type Overflow } from "./calendar";
import { instantOf, wallAt } from "./zone";

export type CalendarSpan =
  | { readonly days: number }
  | { readonly weeks: number }
  | { readonly months: number }
  | { readonly years: number };

export type Duration = { readonly hours: number } | CalendarSpan;

const hourMs = 3_600_000;

/** @returns epoch ms. A date that does not exist goes to the next that does, so nothing is due before its rule. */
export function dueAfter(fromMs: number, duration: Duration, zone: string): number {
  if ("hours" in duration) return fromMs + duration.hours * hourMs;
  const wall = wallAt(fromMs, zone);
  const { year, month, day } = addSpan(wall, duration, "keepLonger");
  return instantOf({ ...wall, year, month, day }, zone) + (((fromMs % 1000) + 1000) % 1000);
}

export function addSpan(from: CivilDate, span: CalendarSpan, overflow: Overflow): CivilDate {
  if ("days" in span) return addDays(from, span.days);
  if ("weeks" in span) return addDays(from, span.weeks * 7);
  if ("months" in span) return addMonths(from, span.months, overflow);
  return addMonths(from, span.years * 12, overflow);
}

/** "72 hours", "1 week". */
export function showDuration(duration: Duration, phrases: SumPhrases = sumsEn): string {
  const { span } = phrases.due;
  if ("hours" in duration) return span(duration.hours, "hours");
  if ("days" in duration) return span(duration.days, "days");
  if ("weeks" in duration) return span(duration.weeks, "weeks");
  return "months" in duration ? span(duration.months, "months") : span(duration.years, "years");
}
