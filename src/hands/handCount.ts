/**
 * The hand timer inside a session: asked for by "how long" at a step that washes or rubs, since nobody but the artist
 * knows when the water runs. It guides and states no fact: what counts is the artist's own "completed".
 */
import type { SessionState } from "../../machines/session/decide";
import type { Moment } from "../session/keeper";
import { groupHere } from "../session/world";
import type { HandMethod } from "./durations";
import { type HandStep, type HandTimer, startTimer, witness } from "./timer";

/** How hands are to be cleaned at the step here; null where it is not about hands, or done already. */
export function handMethodHere({ context: { input, world } }: SessionState): HandMethod | null {
  if (world.paused || world.exposure === "firstAid") return null;
  const verbs = groupHere(input, world).flatMap((step) => step.effects.map(({ verb }) => verb));
  return verbs.includes("wash") ? "wash" : verbs.includes("rub") ? "rub" : null;
}

/** Whether the artist asked for the count: at hands, with no wet clock that the question could mean. */
export const asksForCount = (moment: Moment): moment is Moment & { kept: true } =>
  moment.kept &&
  moment.event.type === "ask.howLong" &&
  Object.values(moment.after.context.world.clocks).every(({ state }) => state === "ready") &&
  handMethodHere(moment.after) !== null;

/** The count after a moment: begun where it was asked for, gone where the step is. */
export function countAfter(count: HandTimer | null, moment: Moment): HandTimer | null {
  if (!moment.kept) return count;
  const method = handMethodHere(moment.after);
  if (method === null) return null;
  if (asksForCount(moment)) return startTimer(method);
  return count?.method === method && isSameStep(moment) ? count : null;
}

const isSameStep = ({ before, after }: Moment & { kept: true }): boolean => {
  const place = ({ context: { world } }: SessionState) => [world.flows, world.place];
  return JSON.stringify(place(before)) === JSON.stringify(place(after));
};

/** @param elapsedMs watched since the last tick; null for time nobody watched. */
export const countOn = (count: HandTimer, elapsedMs: number | null): HandStep =>
  witness(count, elapsedMs ?? Number.POSITIVE_INFINITY);
