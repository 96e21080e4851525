/** A wet clock as it is shown: which shape, how full, which words. Between facts it runs on watched time. Pure. */
import { leftMs, type WetClock, witnessed } from "../../session/wetClock";

export type Face = "counting" | "reapply" | "doubtful" | "dry" | "timeUp" | "ready";

export interface ClockFace {
  readonly surface: string;
  readonly face: Face;
  /** 0..1 of the contact time. */
  readonly filled: number;
  /** "3:41"; null where no time is left to show. */
  readonly left: string | null;
}

/** Rounded up: a wait shown is never too short. */
export function minutesSeconds(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/**
 * @param pendingMs watched since the last fact. Time is shown as up only when the fact that says so is kept: until then
 *   a second is left.
 */
export function faceOf(clock: WetClock, pendingMs: number): ClockFace {
  const now = witnessed(clock, pendingMs);
  const left = now.state === "counting" ? Math.max(1000, leftMs(now)) : leftMs(now);
  const face = now.state === "counting" && now.reapplyAsked ? "reapply" : now.state;
  const hasTime = now.state !== "ready" && now.state !== "timeUp";
  return {
    surface: clock.surface,
    face,
    filled: now.state === "ready" || now.state === "timeUp" ? 1 : Math.min(1, 1 - left / now.neededMs),
    left: hasTime ? minutesSeconds(left) : null,
  };
}
