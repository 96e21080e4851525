/**
 * The sharps as a checker sees them: none, one, or more in use; none, one, or more parked. "More" less one may be one or
 * still more; both are followed. The live session counts them one by one (src/session/fold, countSharp).
 */
import type { EventId } from "../session/protocol";
import type { ThingEffect } from "./conduct";
import type { RuleId } from "./rules";

export type Few = 0 | 1 | 2;

export interface SharpsState {
  readonly used: Few;
  readonly parked: Few;
  readonly everOpened: boolean;
  readonly counted: boolean;
}

export const sharpsAtStart: SharpsState = { used: 0, parked: 0, everOpened: false, counted: false };

const more = (n: Few): Few => (n === 0 ? 1 : 2);
const fewer = (n: Few): readonly Few[] => (n === 2 ? [1, 2] : [0]);
export const areOut = (s: SharpsState): boolean => s.used + s.parked > 0;

export interface Counted {
  readonly next: readonly SharpsState[];
  readonly broken: readonly RuleId[];
}

/** An effect on a sharp. */
export function sharpMoves(s: SharpsState, effect: ThingEffect): Counted {
  const moved = { ...s, counted: false };
  switch (effect.verb) {
    case "open":
      return {
        next: [{ ...moved, used: more(s.used), everOpened: true }],
        broken: s.used > 0 ? ["oldNeedleFirst"] : [],
      };
    case "discard":
      if (effect.all) return { next: [areOut(s) ? { ...moved, used: 0, parked: 0 } : s], broken: [] };
      if (s.used > 0) return { next: fewer(s.used).map((used) => ({ ...moved, used })), broken: [] };
      if (s.parked > 0) return { next: fewer(s.parked).map((parked) => ({ ...moved, parked })), broken: [] };
      return { next: [s], broken: [] };
    case "park":
      if (s.used === 0) return { next: [s], broken: [] };
      return { next: fewer(s.used).map((used) => ({ ...moved, used, parked: more(s.parked) })), broken: [] };
    case "unpark":
      if (s.parked === 0) return { next: [s], broken: [] };
      return { next: fewer(s.parked).map((parked) => ({ ...moved, parked, used: more(s.used) })), broken: [] };
    case "breakSkin":
      return { next: [s], broken: s.used === 0 ? ["needleInUse"] : [] };
    default:
      return { next: [s], broken: [] };
  }
}

/** In the breakdown nothing else is done while a sharp is out. */
export const beforeSharps = (s: SharpsState, effect: ThingEffect, isSharp: boolean): RuleId[] =>
  areOut(s) && !(isSharp && effect.verb === "discard") ? ["sharpsFirst"] : [];

const leaving: ReadonlySet<EventId> = new Set(["clientLeaves", "takeBreak"]);

/** Gloves come off to leave the station: no needle lies about. */
export const leftLying = (s: SharpsState, event: EventId | null): RuleId[] =>
  event !== null && leaving.has(event) && s.used > 0 ? ["sharpsSecured"] : [];

/** Hands that work hold a needle. Until the first is opened, breaking the skin says the same. */
export const atWork = (s: SharpsState, isGloved: boolean): RuleId[] =>
  isGloved && s.everOpened && s.used === 0 ? ["needleInUse"] : [];

export const atCount = (s: SharpsState): RuleId[] => (areOut(s) ? ["sharpsCounted"] : []);
export const sharpsAtClose = (s: SharpsState): RuleId[] =>
  areOut(s) || (s.everOpened && !s.counted) ? ["sharpsCounted"] : [];
