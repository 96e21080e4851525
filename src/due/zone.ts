/**
 * Wall time in an IANA zone, from `Intl` alone, with daylight saving right: an hour that is skipped resolves to the
 * moment after the jump, an hour that comes twice to its first coming (RFC 5545 §3.3.5 reads both the same way).
 */
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import { type CivilDate, dayNumber, parseDate, showDate } from "./calendar";

export type Wall = CivilDate & { readonly hour: number; readonly minute: number; readonly second: number };

const secondMs = 1000;
const dayMs = 86_400_000;
const formats = new Map<string, Intl.DateTimeFormat>();

/** True for an IANA zone this device knows; offsets such as "+01:00" are not zones, they forget daylight saving. */
export function isZone(zone: string): boolean {
  if (!/^[A-Za-z][A-Za-z0-9_+\-/]{1,63}$/.test(zone)) return false;
  try {
    formatFor(zone);
    return true;
  } catch {
    return false;
  }
}

/** What the clock on the wall of `zone` shows at an instant (epoch ms). Seconds are cut, not rounded. */
export function wallAt(instantMs: number, zone: string): Wall {
  const parts = new Map(
    formatFor(zone)
      .formatToParts(instantMs)
      .map((part) => [part.type, part.value]),
  );
  const read = (part: Intl.DateTimeFormatPartTypes) => Number(parts.get(part));
  return {
    year: read("year"),
    month: read("month"),
    day: read("day"),
    hour: read("hour"),
    minute: read("minute"),
    second: read("second"),
  };
}

/** Wall time minus UTC at that instant, in milliseconds: +3 600 000 for Berlin in winter. */
export function offsetMsAt(instantMs: number, zone: string): number {
  return wallAsUtc(wallAt(instantMs, zone)) - Math.floor(instantMs / secondMs) * secondMs;
}

/** The instant (epoch ms) at which `zone` shows this wall time. Skipped times move on by the length of the jump. */
export function instantOf(wall: Wall, zone: string): number {
  const asUtc = wallAsUtc(wall);
  const before = asUtc - offsetMsAt(asUtc - dayMs, zone);
  const after = asUtc - offsetMsAt(asUtc + dayMs, zone);
  const shown = [before, after].filter((at) => wallAsUtc(wallAt(at, zone)) === asUtc);
  return shown.length > 0 ? Math.min(...shown) : before;
}

/** The first instant of a day: midnight, or the moment after it where midnight is skipped. */
export function startOfDay(day: CivilDate, zone: string): number {
  return instantOf({ ...day, hour: 0, minute: 0, second: 0 }, zone);
}

export function dateAt(instantMs: number, zone: string): CivilDate {
  const { year, month, day } = wallAt(instantMs, zone);
  return { year, month, day };
}

/** "2026-11-25 07:40" on the wall of `zone`. */
export function showWall(instantMs: number, zone: string): string {
  const wall = wallAt(instantMs, zone);
  return `${showDate(wall)} ${String(wall.hour).padStart(2, "0")}:${String(wall.minute).padStart(2, "0")}`;
}

/**
 * Reads an instant: RFC 3339 with Z or an offset, or a wall time "2026-11-25T07:40" taken in `zone`.
 * @returns epoch ms, between the years 1900 and 2999.
 */
export function parseInstant(text: string, zone: string): Answer<number, "bad-time"> {
  const match =
    /^(\d{4}-\d{2}-\d{2})[T ]([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d)(?:\.\d{1,9})?)?(Z|[+-](?:[01]\d|2[0-3]):[0-5]\d)?$/i.exec(
      text.trim(),
    );
  const day = match ? parseDate(match[1] ?? "") : undefined;
  if (!match || !day?.ok) return refuse("bad-time", (say) => say.due.badTime(quoted(text)));
  const wall = { ...day.value, hour: Number(match[2]), minute: Number(match[3]), second: Number(match[4] ?? 0) };
  const offset = match[5]?.toUpperCase();
  if (offset === undefined) return answer(instantOf(wall, zone));
  return answer(wallAsUtc(wall) - (offset === "Z" ? 0 : offsetMs(offset)));
}

function offsetMs(text: string): number {
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(4, 6));
  return (text.startsWith("-") ? -minutes : minutes) * 60_000;
}

function wallAsUtc(wall: Wall): number {
  return dayNumber(wall) * dayMs + ((wall.hour * 60 + wall.minute) * 60 + wall.second) * secondMs;
}

function formatFor(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    calendar: "gregory",
    numberingSystem: "latn",
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
  });
  formats.set(zone, made);
  return made;
}
