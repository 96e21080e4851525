/** The calendar day at an instant in a zone; UTC where the zone is not known to this browser. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const options = { year: "numeric", month: "2-digit", day: "2-digit" } as const;
  let made: Intl.DateTimeFormat;
  try {
    made = new Intl.DateTimeFormat("en-CA", { ...options, timeZone: zone });
  } catch {
    made = new Intl.DateTimeFormat("en-CA", { ...options, timeZone: "UTC" });
  }
  formats.set(zone, made);
  return made;
}

/** @returns "2026-11-25". */
export const dayIn = (zone: string, atMs: number): string => formatOf(zone).format(atMs);
