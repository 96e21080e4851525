/** The spoken tour: its stops in order, which phrase each lets the artist try, and what moves it on. Pure. */
import type { CommandId } from "../intent/phrases";

export const tourStops = [
  "welcome",
  "done",
  "whatNow",
  "wet",
  "timeUp",
  "undo",
  "refuse",
  "accident",
  "quiet",
] as const;
export type TourStop = (typeof tourStops)[number];

/** Said by the artist at that stop; it does nothing but let the tour go on. */
export const triedAt: Readonly<Record<TourStop, CommandId | null>> = {
  welcome: null,
  done: "done",
  whatNow: "whatNow",
  wet: "applied",
  timeUp: null,
  undo: "undo",
  refuse: null,
  accident: "accident",
  quiet: null,
};

export interface Tour {
  readonly stop: TourStop;
  /** The sentence still sounds, or the phrase is waited for, or it was heard. */
  readonly stage: "speaking" | "trying" | "heard";
  /** Since the sentence ended. */
  readonly waitedMs: number;
}

export type TourEvent =
  | { readonly type: "spoken" }
  | { readonly type: "heard"; readonly command: CommandId }
  | { readonly type: "waited"; readonly ms: number; readonly doesListen: boolean }
  | { readonly type: "next" };

export const firstStop: Tour = { stop: "welcome", stage: "speaking", waitedMs: 0 };

/** Between two sentences, and after a phrase was understood. */
const breathMs = 1_200;
/** Nobody has to succeed: after this the tour goes on, sooner where nothing can be heard. */
const patienceMs = 15_000;
const patienceDeafMs = 5_000;

/** @returns the tour after it, or null when it is over. */
export function tourAfter(tour: Tour, event: TourEvent): Tour | null {
  const tried = triedAt[tour.stop];
  switch (event.type) {
    case "next":
      return following(tour);
    case "spoken":
      return tour.stage === "speaking" ? { ...tour, stage: "trying", waitedMs: 0 } : tour;
    case "heard":
      return event.command === tried ? { ...tour, stage: "heard", waitedMs: 0 } : tour;
    case "waited": {
      if (tour.stage === "speaking") return tour;
      const waitedMs = tour.waitedMs + event.ms;
      const isWaiting = tour.stage === "trying" && tried !== null;
      const enough = isWaiting ? (event.doesListen ? patienceMs : patienceDeafMs) : breathMs;
      return waitedMs >= enough ? following(tour) : { ...tour, waitedMs };
    }
  }
}

function following({ stop }: Tour): Tour | null {
  const next = tourStops[tourStops.indexOf(stop) + 1];
  return next === undefined ? null : { stop: next, stage: "speaking", waitedMs: 0 };
}
