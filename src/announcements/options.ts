/** "List my choices": the few that one most likely wants now, in this order; the rest is on the screen. Pure. */
import type { SessionState } from "../../machines/session/decide";
import { listenedFor } from "../../machines/session/listenedFor";
import type { CommandId } from "../intent/phrases";

/** Answers before anything else, then the walk, then what happens during the work. */
const first: readonly CommandId[] = [
  "confirm",
  "yes",
  "no",
  "reasonNotForClient",
  "reasonNoStock",
  "reasonOwnDecision",
  "resume",
  "done",
  "applied",
  "wiped",
  "back",
  "skip",
  "scan",
  "newNeedle",
  "moreInk",
  "freshGloves",
  "takeBreak",
  "finish",
  "close",
  "undo",
  "problem",
  "stopEarly",
];
const most = 5;

export interface Options {
  readonly commands: readonly CommandId[];
  /** More may be said than these. */
  readonly isMore: boolean;
}

/** What can always be said is not told: it is learned once, and the list stays short. */
export function optionsNow(state: SessionState): Options {
  const now = listenedFor(state);
  const wanted = first.filter((command) => now.has(command));
  return { commands: wanted.slice(0, most), isMore: wanted.length > most };
}
