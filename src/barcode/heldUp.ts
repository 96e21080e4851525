/**
 * From picture after picture, one code when it is held up: seen alike in two pictures running, since a bar code in
 * motion may misread once; told once, and again only after it was out of sight for a while.
 */
import { readPackCode, type Seen } from "./packCode";

export interface HeldUp {
  readonly last: string | null;
  readonly told: string | null;
  /** When the told one was in sight last, ms of the same clock. */
  readonly toldSeenMs: number;
}

export const nothingHeld: HeldUp = { last: null, told: null, toldSeenMs: 0 };

/** As long as a hand needs to turn a box over and show another side. */
export const awayMs = 1_500;

const keyOf = ({ symbology, text }: Seen): string => `${symbology} ${text}`;

/** @param seen what one picture held; of several codes the one that says most is meant. */
export function lookAt(before: HeldUp, seen: readonly Seen[], atMs: number): { next: HeldUp; told: Seen | null } {
  const best = mostTelling(seen);
  const key = best && keyOf(best);
  const isAway = before.told !== null && key !== before.told && atMs - before.toldSeenMs >= awayMs;
  const told = isAway ? null : before.told;
  if (!best) return { next: { ...before, told, last: null }, told: null };
  if (key === told) return { next: { last: key, told, toldSeenMs: atMs }, told: null };
  if (key !== before.last) return { next: { ...before, told, last: key }, told: null };
  return { next: { last: key, told: key, toldSeenMs: atMs }, told: best };
}

/** A box often carries a number for the till beside the code with its lot. */
const mostTelling = (seen: readonly Seen[]): Seen | null =>
  seen.toSorted((a, b) => worth(b) - worth(a) || keyOf(a).localeCompare(keyOf(b)))[0] ?? null;

function worth(seen: Seen): number {
  // The century does not matter for how much a code says.
  const read = readPackCode(seen, 2026);
  if (!read.ok) return 0;
  return read.pack.lot === null ? 1 : 2;
}
