/** The hand timer aloud: the seconds as they go by, and when they are enough. Asked for, so never an interruption. */
import type { HandTimer, HandWords } from "../hands/timer";
import { fill, numberPart } from "./fill";
import type { Phrasebook } from "./phrasebook";
import type { Part, Utterance } from "./utterance";

const aloud = (parts: readonly Part[]): Utterance => ({ key: "handCount", parts, urgency: "soon", solicited: true });

export const sayCountBegun = (book: Phrasebook, { neededMs }: HandTimer): Utterance =>
  aloud(fill(book.handCount.begun, { seconds: [numberPart(book, neededMs / 1000)] }));

/** "Ten." ... "That is forty. Enough." Never "washed": only the artist knows. */
export function sayCount(book: Phrasebook, words: HandWords, { neededMs }: HandTimer): Utterance {
  switch (words.code) {
    case "count":
      return aloud([numberPart(book, words.seconds)]);
    case "done":
      return aloud(fill(book.handCount.enough, { seconds: [numberPart(book, neededMs / 1000)] }));
    case "start-again":
      return aloud(fill(book.handCount.startAgain));
    case "short":
      return aloud(fill(book.handCount.short, { seconds: [numberPart(book, words.shortS)] }));
  }
}
