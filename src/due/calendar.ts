/**
 * Calendar dates without a clock or a zone, and sums on them. A date that does not exist after adding months or years
 * is resolved by name: `keepLonger` takes the next day that exists, `monthEnd` the last day of the month.
 */
import { type Answer, answer, quoted, refuse } from "../sums/answer";

/** A day on the wall calendar (proleptic Gregorian). month 1-12, day 1-31. */
export type CivilDate = { readonly year: number; readonly month: number; readonly day: number };

export type Overflow = "keepLonger" | "monthEnd";

const dayMs = 86_400_000;

/** Reads "2026-11-25" strictly, years 1900 to 2999; a day that does not exist is refused. */
export function parseDate(text: string): Answer<CivilDate, "bad-date"> {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text.trim());
  if (match) {
    const date = { year: Number(match[1]), month: Number(match[2]), day: Number(match[3]) };
    if (date.year >= 1900 && date.year <= 2999 && exists(date)) return answer(date);
  }
  return refuse("bad-date", (say) => say.due.badDate(quoted(text)));
}

/** A date the program itself writes; throws on a day that does not exist, which would be our own mistake. */
export function date(text: string): CivilDate {
  const parsed = parseDate(text);
  if (!parsed.ok) throw new RangeError(parsed.words);
  return parsed.value;
}

export function showDate({ year, month, day }: CivilDate): string {
  return `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

/** Days since 1970-01-01; subtracting two gives the days between them. */
export function dayNumber({ year, month, day }: CivilDate): number {
  return Date.UTC(year, month - 1, day) / dayMs;
}

export function fromDayNumber(days: number): CivilDate {
  const utc = new Date(days * dayMs);
  return { year: utc.getUTCFullYear(), month: utc.getUTCMonth() + 1, day: utc.getUTCDate() };
}

/** Negative when `a` is before `b`, 0 on the same day. */
export function compareDates(a: CivilDate, b: CivilDate): number {
  return dayNumber(a) - dayNumber(b);
}

export function addDays(from: CivilDate, days: number): CivilDate {
  return fromDayNumber(dayNumber(from) + days);
}

/** Adds whole months, keeping the day of the month where it exists. */
export function addMonths(from: CivilDate, months: number, overflow: Overflow): CivilDate {
  const index = from.year * 12 + (from.month - 1) + months;
  const target = { year: Math.floor(index / 12), month: (index % 12) + 1, day: from.day };
  const last = daysInMonth(target.year, target.month);
  if (target.day <= last) return target;
  const monthEnd = { ...target, day: last };
  return overflow === "monthEnd" ? monthEnd : addDays(monthEnd, 1);
}

/** Adds whole years: 29 February + 3 years is 1 March under `keepLonger`. */
export function addYears(from: CivilDate, years: number, overflow: Overflow): CivilDate {
  return addMonths(from, years * 12, overflow);
}

/**
 * The n-th working day after `from`: Monday to Friday, less the holidays given.
 * The day itself does not count; which holidays apply is the studio's to say.
 */
export function addWorkingDays(from: CivilDate, days: number, holidays: readonly CivilDate[] = []): CivilDate {
  const closed = new Set(holidays.map(showDate));
  let at = dayNumber(from);
  for (let left = days; left > 0; ) {
    at += 1;
    const weekday = (((at + 4) % 7) + 7) % 7; // 1970-01-01 was a Thursday; 0 is Sunday
    if (weekday !== 0 && weekday !== 6 && !closed.has(showDate(fromDayNumber(at)))) left -= 1;
  }
  return fromDayNumber(at);
}

export function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

function exists({ year, month, day }: CivilDate): boolean {
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}
