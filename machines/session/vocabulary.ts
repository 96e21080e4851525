/** Words of the session: the events it hears and where they come from. The facts it states are in src/session/fact. */
import type { DiscrepancyReason, GapCause, SkipReason } from "../../src/session/fact";
import type { EventId } from "../../src/session/protocol";

/** Milliseconds of monotonic time. Never a wall-clock instant. */
export type Ms = number;
export type ItemId = string;

/**
 * Reports say what happened and are always kept. Requests ask for leave and may be refused, with the reason.
 * `surface` and `item` may be left out: the companion then takes the only one it can be, or names them and asks.
 */
export type SessionEvent =
  // requests
  | { type: "session.begin"; today: string }
  | { type: "step.again" }
  | { type: "step.back" }
  | { type: "step.skip" }
  | { type: "procedure.finish" }
  | { type: "session.close" }
  | { type: "session.pause" }
  | { type: "session.resume" }
  | { type: "report.undo" }
  | { type: "brisk.set"; on: boolean }
  /** May this be touched with the hands as they are? A no is a refusal and is kept; a yes changes nothing. */
  | { type: "may.touch"; item?: ItemId }
  /** Look for a code with the camera now. The camera stands outside; nothing is stated but a refusal. */
  | { type: "code.wanted" }
  // questions the companion answers from what is so; nothing changes
  | { type: "ask.options" }
  | { type: "ask.howLong" }
  | { type: "ask.whatNow" }
  | { type: "ask.whatLeft" }
  // reports
  | { type: "step.done" }
  | { type: "step.problem" }
  | { type: "surface.applied"; surface?: ItemId }
  | { type: "surface.wiped"; surface?: ItemId }
  | { type: "event.reported"; event: EventId; item?: ItemId }
  /** A reusable thing is taken out of use, or taken back: it then counts as soiled. */
  | { type: "item.outOfUse"; item?: ItemId }
  | { type: "item.backInUse"; item: ItemId }
  | { type: "sharps.counted"; inContainer: number }
  | { type: "sharps.explained"; reason: DiscrepancyReason }
  | { type: "lot.given"; item: ItemId; lot: string; expiry: string | null }
  /** A code was held up to the camera and read; it is read back before it counts. */
  | { type: "lot.shown"; lot: string; expiry: string | null }
  /** A code was held up that cannot be taken. */
  | { type: "code.refused"; why: "codeUnreadable" | "codeWithoutLot" | "codeUnsure" }
  | { type: "exposure.reported" }
  /** A note was spoken; its sound is kept beside the log. `note`: the commitment to it. */
  | { type: "note.recorded"; note: string; lengthMs: Ms }
  // answers
  | { type: "answer.yes"; surface?: ItemId }
  | { type: "answer.no"; surface?: ItemId }
  | { type: "answer.confirm" }
  | { type: "reason.given"; reason: SkipReason }
  // the world
  /** Monotonic time watched since the last one, within one page life. `today` where the day may have turned. */
  | { type: "time.witnessed"; elapsedMs: Ms; today?: string }
  /** Reload, sleep, or clocks drifting apart: nothing is credited. */
  | { type: "time.gap"; why: GapCause }
  /** The planner found a better order for what is left of the breakdown. Taken only if it is sound. */
  | { type: "plan.chosen"; order: readonly string[] }
  /** By the plan these are best wetted again now: while the hands are free, or before the gloves are changed. */
  | { type: "reapply.planned"; surfaces: readonly ItemId[] }
  | { type: "ear.lost" }
  | { type: "ear.back" }
  /** The companion has begun to ask this aloud; a yes or a spray without a name answers it. Nothing is stated. */
  | { type: "question.asked"; about: "stillWet" | "stayedWet" | "reapply" | "wetAgain"; surfaces: readonly ItemId[] };

/** How an event came in. */
export type Way =
  | { by: "voice"; confidence: number }
  | { by: "pedal" | "touch" | "keyboard" | "scan" | "clock" | "app" };
