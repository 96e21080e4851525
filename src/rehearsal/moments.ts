/** When the wet clocks will speak up next, so that a recorded artist does not talk into it. Pure. */
import type { SessionState } from "../../machines/session/decide";
import { credit } from "../session/fold";
import { leftMs, reapplyLeadMs, type WetClock } from "../session/wetClock";

/** @returns from now, in milliseconds, the moments at which a running clock is full or wants to be re-applied. */
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
  // Asked already: what counts now is to answer before it lapses.
  return reapplyAsked ? [] : [lapse - reapplyLeadMs];
}

/** What each surface was last asked about, aloud. */
export type AskedAloud = Map<string, string>;

const questionOf = ({ state, reapplyAsked }: WetClock): string | null => {
  if (state === "timeUp") return "stayedWet";
  return state === "counting" && reapplyAsked ? "reapply" : null;
};

/** A clock waits for an answer whose question has not been spoken yet. */
export const isUnasked = ({ context: { world } }: SessionState, asked: AskedAloud): boolean =>
  Object.values(world.clocks).some((clock) => {
    const question = questionOf(clock);
    return question !== null && asked.get(clock.surface) !== question;
  });

/** What was asked of a clock that asks nothing any more is no matter now. */
export function forgetSettled({ context: { world } }: SessionState, asked: AskedAloud): void {
  for (const surface of asked.keys()) {
    const clock = world.clocks[surface];
    if (!clock || questionOf(clock) === null) asked.delete(surface);
  }
}
