/**
 * The six digits of a GS1 date, YYMMDD. The century is the one that puts the year at most 49 behind or 50 ahead (General
 * Specifications, section 7.12); day 00 means the last day of the month for an expiry, and "not stated" for a making.
 */
import { daysInMonth } from "../due/calendar";

export type Gs1Date =
  | {
      readonly ok: true;
      /** "2026-11-30". */
      readonly day: string;
      /** The code said only the month: regulated healthcare items must carry a day since 2025 (GSCN 21-040). */
      readonly isMonthOnly: boolean;
    }
  | { readonly ok: false };

/** @param currentYear four digits, of the place where it is read. */
export function yearOf(twoDigits: number, currentYear: number): number {
  const century = currentYear - (currentYear % 100);
  const ahead = twoDigits - (currentYear % 100);
  if (ahead >= 51) return century - 100 + twoDigits;
  if (ahead <= -50) return century + 100 + twoDigits;
  return century + twoDigits;
}

export function readGs1Date(text: string, currentYear: number): Gs1Date {
  if (!/^\d{6}$/.test(text)) return { ok: false };
  const year = yearOf(Number(text.slice(0, 2)), currentYear);
  const month = Number(text.slice(2, 4));
  const stated = Number(text.slice(4));
  if (month < 1 || month > 12) return { ok: false };
  const last = daysInMonth(year, month);
  if (stated > last) return { ok: false };
  const day = stated === 0 ? last : stated;
  const two = (value: number) => String(value).padStart(2, "0");
  return { ok: true, day: `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`, isMonthOnly: stated === 0 };
}
