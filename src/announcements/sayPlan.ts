/** When the station will be ready: at the beginning of the breakdown, when that has moved, and on "how long". */
import { durationPart, fill, sentences } from "./fill";
import type { Phrasebook } from "./phrasebook";
import type { Spoken } from "./sayClock";
import { unlessNone } from "./unlessNone";
import type { Part, Utterance } from "./utterance";

/** Said for the first time, or because it has moved. */
export type ReadyTime = "first" | "later" | "sooner";

export const readyParts = (book: Phrasebook, ready: ReadyTime, ms: number): readonly Part[] =>
  fill(book.ready[ready], { duration: [durationPart(book, ms)] });

/** A time that has moved can wait for a pause in the talk. What it does not count is named once, with the first. */
export const sayReady = (
  book: Phrasebook,
  ready: ReadyTime,
  ms: number,
  outOfUse: readonly Spoken[] = [],
): Utterance => ({
  key: "ready",
  parts: sentences(readyParts(book, ready, ms), ready === "first" ? notCounted(book, outOfUse) : []),
  urgency: ready === "first" ? "soon" : "whenQuiet",
  solicited: ready === "first",
});

const notCounted = (book: Phrasebook, outOfUse: readonly Spoken[]): readonly Part[] =>
  unlessNone(book, book.answer.outOfUse, outOfUse);

/** "How long": the station first, then what is wet; what the station is ready without is named. */
export const withReady = (
  book: Phrasebook,
  readyInMs: number | null,
  howLong: Utterance,
  isWet: boolean,
  outOfUse: readonly Spoken[] = [],
): Utterance =>
  readyInMs === null
    ? howLong
    : {
        ...howLong,
        parts: sentences(readyParts(book, "first", readyInMs), isWet ? howLong.parts : [], notCounted(book, outOfUse)),
      };
