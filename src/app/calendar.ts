/** Today by the station's calendar. */

/** @param zone IANA time zone. @returns "2026-11-25" */
export function todayIn(zone: string, epochMs: number): string {
  const parts = new Intl.DateTimeFormat("en-CA", { timeZone: zone, year: "numeric", month: "2-digit", day: "2-digit" });
  const { year, month, day } = Object.fromEntries(parts.formatToParts(epochMs).map(({ type, value }) => [type, value]));
  return `${year}-${month}-${day}`;
}

export const zoneHere = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;
