/**
 * A whole session in the small station on an ordinary day: a lamp touched, fresh gloves, one step left out, one early
 * wipe, a re-application in time, a report taken back, and the close.
 */
import type { SessionEvent } from "../../../machines/session/vocabulary";

const done: SessionEvent = { type: "step.done" };
const confirm: SessionEvent = { type: "answer.confirm" };
const times = (count: number, event: SessionEvent): SessionEvent[] => Array.from({ length: count }, () => event);
const seconds = (count: number): SessionEvent[] => times(count, { type: "time.witnessed", elapsedMs: 1000 });
const applied = (surface: string): SessionEvent => ({ type: "surface.applied", surface });
const stayedWet = (surface: string): SessionEvent[] => [
  { type: "question.asked", about: "stayedWet", surfaces: [surface] },
  { type: "answer.yes" },
];

export const wholeSession: readonly SessionEvent[] = [
  done,
  { type: "step.skip" },
  { type: "reason.given", reason: "ownDecision" },
  ...times(5, done),
  { type: "event.reported", event: "touched", item: "lamp" },
  { type: "report.undo" },
  confirm,
  { type: "event.reported", event: "touched", item: "lamp" },
  { type: "event.reported", event: "freshGloves" },
  ...times(3, done),
  ...seconds(30),
  { type: "procedure.finish" },
  done,
  // needle away, counted; cup, covers, cleaning; both wet
  done,
  confirm,
  ...times(5, done),
  ...seconds(60),
  { type: "surface.wiped", surface: "lamp" },
  applied("lamp"),
  ...seconds(45),
  applied("chair"),
  ...seconds(75),
  ...stayedWet("chair"),
  applied("lamp"),
  ...seconds(60),
  ...stayedWet("lamp"),
  ...times(7, done),
  { type: "session.close" },
  confirm,
];
