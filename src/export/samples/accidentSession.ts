/**
 * The beginning of a session that rules 1.2.0 read otherwise than those before: an accident with bare hands in the middle
 * of a change of gloves while the station is built, and covers taken off that were never there.
 */
import type { SessionEvent } from "../../../machines/session/vocabulary";

const done: SessionEvent = { type: "step.done" };
const confirm: SessionEvent = { type: "answer.confirm" };
const times = (count: number, event: SessionEvent): SessionEvent[] => Array.from({ length: count }, () => event);

export const accidentSession: readonly SessionEvent[] = [
  ...times(3, done),
  { type: "step.skip" },
  { type: "reason.given", reason: "ownDecision" },
  done,
  { type: "event.reported", event: "freshGloves" },
  done,
  { type: "exposure.reported" },
  { type: "session.resume" },
  ...times(12, done),
  { type: "procedure.finish" },
  done,
  done,
  confirm,
  ...times(3, done),
];
