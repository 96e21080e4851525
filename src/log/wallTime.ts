/**
 * Wall time as RFC 3339 writes it, read by its grammar and not by `Date`, which takes a space for the T and an hour 24
 * and refuses a leap second. It says when by the clock on the wall; no contact time is ever counted with it.
 */
import { z } from "zod";

/** The one form the log writes: milliseconds and a numeric offset, "2026-11-25T07:40:00.123+01:00". */
export const WallTime = z.iso.datetime({ offset: true, precision: 3 }).regex(/[+-]\d\d:\d\d$/, "a numeric offset");
export type WallTime = z.infer<typeof WallTime>;

export type Instant = {
  /** Milliseconds since 1970; a leap second counts as the first of the next day, as POSIX does. */
  epochMs: number;
  /** Minutes east of UTC. */
  offsetMin: number;
  leap: boolean;
};

const two = (n: number) => String(Math.abs(Math.trunc(n))).padStart(2, "0");

/**
 * @param epochMs   Milliseconds since 1970.
 * @param offsetMin Minutes east of UTC, -1439 to 1439; by default this device's own offset at that instant.
 */
export function wallTime(epochMs: number, offsetMin: number = -new Date(epochMs).getTimezoneOffset()): WallTime {
  const local = new Date(Math.round(epochMs) + offsetMin * 60_000).toISOString().slice(0, -1);
  return `${local}${offsetMin < 0 ? "-" : "+"}${two(offsetMin / 60)}:${two(offsetMin % 60)}`;
}

const grammar =
  /^(\d{4})-(\d\d)-(\d\d)[Tt]([01]\d|2[0-3]):([0-5]\d):([0-5]\d|60)(\.\d+)?(?:[Zz]|([+-])([01]\d|2[0-3]):([0-5]\d))$/;

/** Reads any RFC 3339 date-time (section 5.6), to the millisecond. @returns null where the text is not one. */
export function readWallTime(text: string): Instant | null {
  const match = grammar.exec(text);
  if (match === null) return null;
  const [year, month, day, hour, minute, second] = match.slice(1, 7).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return null;
  const size = Number(match[9] ?? 0) * 60 + Number(match[10] ?? 0);
  const offsetMin = match[8] === "-" ? -size : size;
  const fractionMs = Math.trunc(Number(`0${match[7] ?? ""}`) * 1000 + 1e-6);
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  date.setUTCHours(hour, minute - offsetMin, second, fractionMs);
  const leap = second === 60;
  if (leap && !endsMonthUtc(date.getTime() - fractionMs)) return null;
  return { epochMs: date.getTime(), offsetMin, leap };
}

const daysIn = (year: number, month: number): number => {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
};

/** Leap seconds stand only at the end of a month in UTC (RFC 3339 section 5.7): the second after one opens a month. */
const endsMonthUtc = (afterMs: number): boolean => {
  const after = new Date(afterMs);
  return after.getUTCDate() === 1 && afterMs % 86_400_000 === 0;
};
