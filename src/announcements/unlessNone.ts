/** A sentence about things by name; nothing where there are none. */
import { fill, itemPart, listOf } from "./fill";
import type { Phrasebook } from "./phrasebook";
import type { Spoken } from "./sayClock";
import type { Part } from "./utterance";

export const unlessNone = (book: Phrasebook, sentence: string, items: readonly Spoken[]): readonly Part[] =>
  items.length === 0
    ? []
    : fill(sentence, {
        items: listOf(
          book,
          items.map((item) => itemPart(book, item)),
        ),
      });
