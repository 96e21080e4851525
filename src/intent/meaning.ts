/** What each command asks of the session: one table, from what was heard to the event. Pure. */
import type { SessionEvent } from "../../machines/session/vocabulary";
import type { EventId } from "../session/protocol";
import type { CommandId } from "./phrases";

/** The voice's own business; nothing of the session. */
export type VoiceWish = { type: "voice.louder" } | { type: "voice.quieter" } | { type: "voice.hush" };
export type Meaning = SessionEvent | VoiceWish;

const happened = (event: EventId): SessionEvent => ({ type: "event.reported", event });

export const meaning: Readonly<Record<CommandId, Meaning>> = {
  done: { type: "step.done" },
  again: { type: "step.again" },
  back: { type: "step.back" },
  skip: { type: "step.skip" },
  problem: { type: "step.problem" },
  pause: { type: "session.pause" },
  resume: { type: "session.resume" },
  howLong: { type: "ask.howLong" },
  whatNow: { type: "ask.whatNow" },
  whatLeft: { type: "ask.whatLeft" },
  yes: { type: "answer.yes" },
  no: { type: "answer.no" },
  confirm: { type: "answer.confirm" },
  undo: { type: "report.undo" },
  reasonNotForClient: { type: "reason.given", reason: "notForClient" },
  reasonNoStock: { type: "reason.given", reason: "noStock" },
  reasonOwnDecision: { type: "reason.given", reason: "ownDecision" },
  applied: { type: "surface.applied" },
  wiped: { type: "surface.wiped" },
  freshGloves: happened("freshGloves"),
  tornGlove: happened("tornGlove"),
  tornBarrier: happened("tornBarrier"),
  newNeedle: happened("newNeedle"),
  parkNeedle: happened("parkNeedle"),
  moreInk: happened("moreInk"),
  dropped: happened("dropped"),
  touched: happened("touched"),
  photo: happened("photo"),
  machineSwap: happened("machineSwap"),
  takeBreak: happened("takeBreak"),
  clientLeaves: happened("clientLeaves"),
  clientReturns: happened("clientReturns"),
  clientUnwell: happened("clientUnwell"),
  stopEarly: happened("stopEarly"),
  note: happened("note"),
  finish: { type: "procedure.finish" },
  close: { type: "session.close" },
  accident: { type: "exposure.reported" },
  louder: { type: "voice.louder" },
  quieter: { type: "voice.quieter" },
  mayITouch: { type: "may.touch" },
  scan: { type: "code.wanted" },
  hush: { type: "voice.hush" },
  options: { type: "ask.options" },
};
