/**
 * What two clocks say about the time that went by: watched, or a gap. Only monotonic time of one page life is watched,
 * and only in short ticks; a wall clock that disagrees by more than 2 s makes the time doubtful.
 */
import type { GapCause } from "./fact";

export interface ClockReading {
  /** Milliseconds since the page life began; never goes back. */
  readonly monoMs: number;
  /** Milliseconds since the epoch, as the device believes. */
  readonly wallMs: number;
}

/** Wall and monotonic time may drift apart by this much before nobody believes either. */
export const driftMs = 2_000;
/** A tick longer than this was not watched: the page slept or was frozen. */
export const longestTickMs = 5_000;

export type Watched = { type: "time.witnessed"; elapsedMs: number } | { type: "time.gap"; why: GapCause };

export function watched(before: ClockReading, now: ClockReading): Watched {
  const mono = now.monoMs - before.monoMs;
  const wall = now.wallMs - before.wallMs;
  if (mono < 0 || !Number.isFinite(mono) || !Number.isFinite(wall)) return { type: "time.gap", why: "drift" };
  if (mono > longestTickMs) return { type: "time.gap", why: "sleep" };
  if (wall - mono > longestTickMs) return { type: "time.gap", why: "sleep" };
  if (Math.abs(wall - mono) > driftMs) return { type: "time.gap", why: wall < mono ? "clockSet" : "drift" };
  return { type: "time.witnessed", elapsedMs: Math.round(mono) };
}
