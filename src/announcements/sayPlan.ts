/** When the station will be ready: at the beginning of the breakdown, when that has moved, and on "how long". */
import { durationPart, fill, sentences } from "./fill";
import type { Phrasebook } from "./phrasebook";
import type { Part, Utterance } from "./utterance";

/** Said for the first time, or because it has moved. */
export type ReadyTime = "first" | "later" | "sooner";

export const readyParts = (book: Phrasebook, ready: ReadyTime, ms: number): readonly Part[] =>
  fill(book.ready[ready], { duration: [durationPart(book, ms)] });

/** A time that has moved can wait for a pause in the talk. */
export const sayReady = (book: Phrasebook, ready: ReadyTime, ms: number): Utterance => ({
  key: "ready",
  parts: readyParts(book, ready, ms),
  urgency: ready === "first" ? "soon" : "whenQuiet",
  solicited: ready === "first",
});

/** "How long": the station first, then what is wet. */
export const withReady = (book: Phrasebook, readyInMs: number | null, howLong: Utterance, isWet: boolean): Utterance =>
  readyInMs === null
    ? howLong
    : { ...howLong, parts: sentences(readyParts(book, "first", readyInMs), isWet ? howLong.parts : []) };
