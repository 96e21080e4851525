/**
 * The recorded artist: what an artist who works by the protocol says next. Pure. It looks at what is so, as the artist
 * in the room would see it, and never at what the companion is about to say.
 */
import type { SessionState } from "../../machines/session/decide";
import type { CommandId } from "../intent/phrases";
import { skinsIn } from "../session/skin";
import { kindsIn, stepHere } from "../session/world";

/** What happens during the work, in this order; each ends before the next is told. */
export interface Plan {
  readonly during: readonly CommandId[];
  /** What was touched, when asked "which one?". */
  readonly touched: string;
}

/** A session as it goes on an ordinary day. */
export const ordinaryDay: Plan = {
  during: ["freshGloves", "newNeedle", "moreInk", "touched", "whatNow"],
  touched: "lamp",
};

/** What has been said of the plan so far. */
export interface Told {
  readonly during: number;
  readonly howLong: boolean;
}

/** Spraying a few surfaces again; our guess, inside the 20 s that the companion leaves for it. */
const sprayAgainMs = 6_000;

export const nothingTold: Told = { during: 0, howLong: false };

export type Wish =
  /** `handsOnMs`: what a practised artist needs to do it before saying so. */
  | { readonly does: "speak"; readonly command: CommandId; readonly handsOnMs: number; readonly told: Told }
  /** A clock runs, or the companion is about to ask. */
  | { readonly does: "wait" }
  | { readonly does: "leave" };

export function nextWish(state: SessionState, plan: Plan, told: Told): Wish {
  const { input, world, naming } = state.context;
  const speak = (command: CommandId, next: Told = told, handsOnMs = 0): Wish => ({
    does: "speak",
    command,
    handsOnMs,
    told: next,
  });
  if (world.phase === "closed") return { does: "leave" };
  if (state.matches({ conversation: "naming" }))
    // Of sprays, what was asked for last is what was done.
    return speak(naming?.groups || naming?.candidates[naming.at] === plan.touched ? "yes" : "no");
  if (state.matches({ conversation: "readBack" })) return speak("confirm");
  if (world.exposure === "firstAid") return speak("resume");

  const answer = answerToQuestion(state);
  if (answer) return speak(answer, told, answer === "applied" ? sprayAgainMs : 0);
  const step = stepHere(input, world);
  const clocks = Object.values(world.clocks);
  if (clocks.some((clock) => clock.state === "timeUp" || clock.reapplyAsked)) return { does: "wait" };
  if (step) {
    const handsOnMs = step.handsOnSec * 1000;
    const skins = skinsIn(kindsIn(input));
    if (step.effects.some((effect) => effect.verb === "apply" && !skins.includes(effect.item)))
      return speak("applied", told, handsOnMs);
    const wipes = step.effects.flatMap((effect) => (effect.verb === "wipe" ? [effect.item] : []));
    if (wipes.length === 0) return speak("done", told, handsOnMs);
    if (wipes.every((id) => (world.clocks[id]?.state ?? "ready") === "ready")) return speak("wiped", told, handsOnMs);
    const canAsk = world.phase === "breakdown" && !told.howLong;
    return canAsk ? speak("howLong", { ...told, howLong: true }) : { does: "wait" };
  }
  if (world.phase === "procedure") {
    const next = plan.during[told.during];
    return next === undefined ? speak("finish") : speak(next, { ...told, during: told.during + 1 });
  }
  if (clocks.some((clock) => clock.state !== "ready")) return { does: "wait" };
  return speak(world.phase === "breakdown" ? "close" : "done");
}

/** The companion has asked about wetness aloud, and that still stands. */
function answerToQuestion({ context: { world, asked, askedSprays } }: SessionState): CommandId | null {
  const clocksIn = (surfaces: readonly string[]) => surfaces.flatMap((id) => world.clocks[id] ?? []);
  const waits = asked?.about === "stillWet" ? "doubtful" : "timeUp";
  if (asked && clocksIn(asked.surfaces).some(({ state }) => state === waits)) return "yes";
  const wants = clocksIn(askedSprays.flat()).some(
    ({ state, reapplyAsked }) => state === "dry" || (state === "counting" && reapplyAsked),
  );
  return wants ? "applied" : null;
}
