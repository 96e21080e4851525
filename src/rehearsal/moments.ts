/** When the wet clocks will speak up next, so that a recorded artist does not talk into it. Pure. */
import type { SessionState } from "../../machines/session/decide";
import { credit } from "../session/fold";
import { leftMs, reapplyLeadMs, type WetClock } from "../session/wetClock";

/** @returns from now, in milliseconds, the moments at which a running clock is full, is to be re-applied, or lapses. */
export function momentsAhead({ context: { world, pendingMs } }: SessionState): readonly number[] {
  return Object.values(credit(world, pendingMs).clocks).flatMap(momentsOf);
}

function momentsOf(clock: WetClock): readonly number[] {
  if (clock.state !== "counting") return [];
  const { reapplyWithinMs, sinceAppliedMs, reapplyAsked } = clock;
  const full = leftMs(clock);
  if (reapplyWithinMs === null) return [full];
  const lapse = reapplyWithinMs - sinceAppliedMs;
  if (lapse >= full) return [full];
  return reapplyAsked ? [lapse] : [lapse - reapplyLeadMs, lapse];
}
