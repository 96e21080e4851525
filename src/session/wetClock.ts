/**
 * A wet clock: how long a surface has been seen wet, out of what its label asks for. It holds credited milliseconds,
 * never a deadline. Split wet periods are never added up. Uncertainty costs time, never safety.
 */

/**
 * - counting: wet as far as anybody knows
 * - doubtful: nobody watched for a while; waits for "still wet"
 * - dry: lapsed or found dry; waits to be wet again, from zero
 * - timeUp: the time is full; waits for "stayed wet"
 * - ready: full and attested
 */
export type WetState = "counting" | "doubtful" | "dry" | "timeUp" | "ready";

export interface WetClock {
  readonly surface: string;
  readonly product: string;
  readonly neededMs: number;
  readonly reapplyWithinMs: number | null;
  readonly creditedMs: number;
  /** Watched time since the product was last put on. */
  readonly sinceAppliedMs: number;
  /** Re-application has been asked for. */
  readonly reapplyAsked: boolean;
  /** It was asked for ahead of its time; it is asked for again when it is due. */
  readonly reapplyPlanned?: boolean;
  readonly state: WetState;
}

export interface WetOrder {
  readonly surface: string;
  readonly product: string;
  readonly neededMs: number;
  readonly reapplyWithinMs: number | null;
}

/** Re-application is asked for this long before the label's limit, so that it can be done in time. */
export const reapplyLeadMs = 30_000;

export const started = (order: WetOrder): WetClock => ({
  ...order,
  creditedMs: 0,
  sinceAppliedMs: 0,
  reapplyAsked: false,
  state: "counting",
});

/** Time counts only while it is watched, and only up to the moment a product may have dried. */
export function witnessed(clock: WetClock, elapsedMs: number): WetClock {
  if (clock.state !== "counting") return clock;
  const elapsed = Math.max(0, elapsedMs);
  return { ...clock, creditedMs: clock.creditedMs + elapsed, sinceAppliedMs: clock.sinceAppliedMs + elapsed };
}

/** Re-applied while still wet: the count goes on. */
export const reapplied = ({ reapplyPlanned: _planned, ...clock }: WetClock): WetClock => ({
  ...clock,
  sinceAppliedMs: 0,
  reapplyAsked: false,
});

/** Wet again after it was dry, or may have been: from zero. */
export const restarted = ({ reapplyPlanned: _planned, ...clock }: WetClock): WetClock => ({ ...started(clock) });

export const afterGap = (clock: WetClock): WetClock =>
  clock.state === "counting" ? { ...clock, state: "doubtful" } : clock;

export const trusted = (clock: WetClock): WetClock =>
  clock.state === "doubtful" ? { ...clock, state: "counting" } : clock;

export const dried = ({ reapplyPlanned: _planned, ...clock }: WetClock): WetClock => ({
  ...clock,
  creditedMs: 0,
  sinceAppliedMs: 0,
  reapplyAsked: false,
  state: "dry",
});

/** Past its re-apply time without it. Equal is still in time. */
export const hasLapsed = (clock: WetClock): boolean =>
  clock.state === "counting" && clock.reapplyWithinMs !== null && clock.sinceAppliedMs > clock.reapplyWithinMs;

/** The limit comes before the contact time is full: it has to be wetted once more, now or later. */
export const owesReapply = (clock: WetClock): boolean =>
  clock.state === "counting" &&
  !clock.reapplyAsked &&
  clock.reapplyWithinMs !== null &&
  clock.creditedMs + (clock.reapplyWithinMs - clock.sinceAppliedMs) < clock.neededMs;

/** Time to ask for re-application. */
export const wantsReapply = (clock: WetClock): boolean =>
  owesReapply(clock) && clock.reapplyWithinMs !== null && clock.sinceAppliedMs >= clock.reapplyWithinMs - reapplyLeadMs;

export const isFull = (clock: WetClock): boolean => clock.creditedMs >= clock.neededMs;

export const leftMs = (clock: WetClock): number => Math.max(0, clock.neededMs - clock.creditedMs);
