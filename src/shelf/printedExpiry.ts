/**
 * A date as printed on a box, YYMMDD (GS1): two-digit years by the century rule, and day 00 for the end of the month.
 * Regulated healthcare items must carry a real day since 1 January 2025 (GS1 GSCN 21-040); 00 is read, with a warning.
 */
import { type CivilDate, daysInMonth } from "../due/calendar";
import { type Answer, answer, quoted, refuse } from "../sums/answer";

export type PrintedExpiry = { readonly date: CivilDate; readonly warning: "day-not-printed" | null };

/** @param currentYear the real year: with it the same two digits mean another century in fifty years' time. */
export function parsePrintedExpiry(text: string, currentYear: number): Answer<PrintedExpiry, "bad-date"> {
  const match = /^(\d{2})(\d{2})(\d{2})$/.exec(text);
  if (match) {
    const year = fullYear(Number(match[1]), currentYear);
    const month = Number(match[2]);
    const day = Number(match[3]);
    const last = month >= 1 && month <= 12 ? daysInMonth(year, month) : 0;
    if (last > 0 && day === 0) return answer({ date: { year, month, day: last }, warning: "day-not-printed" });
    if (day >= 1 && day <= last) return answer({ date: { year, month, day }, warning: null });
  }
  return refuse("bad-date", `${quoted(text)} is not a printed date YYMMDD.`);
}

/** The century within 49 years behind and 50 ahead (GS1 syntax dictionary, date linter). */
export function fullYear(twoDigits: number, currentYear: number): number {
  const apart = twoDigits - (currentYear % 100);
  const century = currentYear - (currentYear % 100);
  if (apart >= 51) return century - 100 + twoDigits;
  if (apart <= -50) return century + 100 + twoDigits;
  return century + twoDigits;
}
