/** Today by the station's calendar. */

const formats = new Map<string, Intl.DateTimeFormat>();

/** Kept: to make one takes longer than all else that a second asks for. */
function formatFor(zone: string): Intl.DateTimeFormat {
  const made =
    formats.get(zone) ??
    new Intl.DateTimeFormat("en-CA", { timeZone: zone, year: "numeric", month: "2-digit", day: "2-digit" });
  formats.set(zone, made);
  return made;
}

/** @param zone IANA time zone. @returns "2026-11-25" */
export function todayIn(zone: string, epochMs: number): string {
  const parts = formatFor(zone).formatToParts(epochMs);
  const { year, month, day } = Object.fromEntries(parts.map(({ type, value }) => [type, value]));
  return `${year}-${month}-${day}`;
}

export const zoneHere = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;
