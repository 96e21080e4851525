/** Commands by what they are for, as the screen lists them. Every command stands once. */
import type { CommandId } from "../../intent/phrases";

export const groupNames = ["goOn", "answer", "ask", "happens", "voice"] as const;
export type GroupName = (typeof groupNames)[number];

export const commandGroups: Readonly<Record<GroupName, readonly CommandId[]>> = {
  goOn: ["done", "back", "skip", "problem", "pause", "resume", "scan", "finish", "close"],
  answer: ["yes", "no", "confirm", "undo", "reasonNotForClient", "reasonNoStock", "reasonOwnDecision"],
  ask: ["again", "options", "howLong", "whatNow", "whatLeft", "mayITouch"],
  happens: [
    "applied",
    "wiped",
    "freshGloves",
    "newNeedle",
    "parkNeedle",
    "moreInk",
    "dropped",
    "touched",
    "tornGlove",
    "tornBarrier",
    "machineSwap",
    "photo",
    "takeBreak",
    "clientLeaves",
    "clientReturns",
    "clientUnwell",
    "stopEarly",
    "note",
    "accident",
  ],
  voice: ["hush", "louder", "quieter"],
};
