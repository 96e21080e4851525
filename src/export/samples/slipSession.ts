/**
 * The beginning of a session that rules 1.5.0 read otherwise than those before: in the breakdown, cleaned but not yet wet,
 * the lamp is touched with soiled gloves.
 */
import type { SessionEvent } from "../../../machines/session/vocabulary";

const done: SessionEvent = { type: "step.done" };
const times = (count: number, event: SessionEvent): SessionEvent[] => Array.from({ length: count }, () => event);
const seconds = (count: number): SessionEvent[] => times(count, { type: "time.witnessed", elapsedMs: 1000 });

export const slipSession: readonly SessionEvent[] = [
  ...times(7, done),
  { type: "procedure.finish" },
  done,
  // needle away, counted; cup, covers, cleaning; the chair wet
  done,
  { type: "answer.confirm" },
  ...times(4, done),
  { type: "event.reported", event: "touched", item: "lamp" },
  // the lamp wetted, then fresh gloves
  ...times(4, done),
  ...seconds(100),
  { type: "surface.applied", surface: "chair" },
  ...seconds(80),
  { type: "question.asked", about: "stayedWet", surfaces: ["chair"] },
  { type: "answer.yes" },
  ...times(2, done),
  { type: "item.outOfUse", item: "lamp" },
  done,
];
