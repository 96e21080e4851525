/**
 * The longest unbroken stay inside a band. Time counts only between two readings that are both inside and close
 * enough together; nothing is interpolated in the cycle's favour, and two short stays are never added up.
 */
import { type Band, inBand } from "./bands";
import type { Reading } from "./reading";

export type Hold = { readonly fromMs: number; readonly toMs: number };

/** A place where the stay ended: below the band, above it, or a gap nobody watched. */
export type Break = {
  readonly atMs: number;
  readonly kind: "below" | "above" | "gap";
  readonly celsius: number | null;
};

/** Readings further apart than this prove nothing about the time between. Chosen here; the maker's interval outranks. */
export const defaultMostGapMs = 60_000;

export type HoldFound = { readonly longest: Hold | null; readonly breaks: readonly Break[] };

/** @returns the longest hold (its first of equals) and every break after the band was first reached. */
export function findHold(readings: readonly Reading[], band: Band, mostGapMs = defaultMostGapMs): HoldFound {
  let current = null as Hold | null;
  let longest = null as Hold | null;
  let last = null as Reading | null;
  const breaks: Break[] = [];
  for (const reading of readings) {
    if (!inBand(reading.celsius, band)) {
      if (current)
        breaks.push({
          atMs: reading.tMs,
          kind: reading.celsius < band.lowC ? "below" : "above",
          celsius: reading.celsius,
        });
      current = null;
    } else if (current && last && reading.tMs - last.tMs > mostGapMs) {
      breaks.push({ atMs: last.tMs, kind: "gap", celsius: null });
      current = { fromMs: reading.tMs, toMs: reading.tMs };
    } else {
      current = { fromMs: current?.fromMs ?? reading.tMs, toMs: reading.tMs };
    }
    if (current && (longest === null || lengthMs(current) > lengthMs(longest))) longest = current;
    last = reading;
  }
  return { longest, breaks };
}

export function lengthMs(hold: Hold | null): number {
  return hold ? hold.toMs - hold.fromMs : 0;
}
