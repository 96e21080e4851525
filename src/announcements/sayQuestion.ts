/** Questions and read-backs. A newer question replaces an older one, so that one yes answers one question. */
import type { CommandId } from "../intent/phrases";
import type { DiscrepancyReason } from "../session/fact";
import { fill, itemPart, listOf, numberPart, sentences } from "./fill";
import type { Phrasebook, UndoWhat } from "./phrasebook";
import type { Spoken } from "./sayClock";
import { counted } from "./sayStep";
import type { Part, Utterance } from "./utterance";

export const questionKey = "question";
const question = (parts: readonly Part[], urgency: Utterance["urgency"] = "soon"): Utterance => ({
  key: questionKey,
  parts,
  urgency,
  solicited: true,
});

/** Names one item at a time: "Which one? Lamp?", then "Tray?"; null when none is left to name. */
export function askItem(book: Phrasebook, item: Spoken | null, isFirst: boolean): Utterance {
  if (item === null) return question(fill(book.ask.noItem));
  return question(fill(isFirst ? book.ask.firstItem : book.ask.nextItem, { item: [itemPart(book, item)] }));
}

/** Names what was sprayed together: "Which one? Lamp and chair?" */
export const askItems = (book: Phrasebook, items: readonly Spoken[], isFirst: boolean): Utterance =>
  question(
    fill(isFirst ? book.ask.firstItem : book.ask.nextItem, {
      item: listOf(
        book,
        items.map((item) => itemPart(book, item)),
      ),
    }),
  );

export const askOutOfUse = (book: Phrasebook): Utterance => question(fill(book.ask.outOfUse));

export const askSkipReason = (book: Phrasebook): Utterance => question(fill(book.ask.skipReason));

/** "Three opened. Are three in the container?" `expected` is what should be there. Kept on the confirmation alone. */
export function askSharps(book: Phrasebook, opened: number, expected: number): Utterance {
  const { none, one, many } = book.ask.sharps;
  const counts = { opened: [numberPart(book, opened)], expected: [numberPart(book, expected)] };
  const asked = opened === 0 ? fill(none) : opened === 1 && expected === 1 ? fill(one) : fill(many, counts);
  return question(sentences(asked, fill(book.ask.closing.confirm)));
}

export const askRecount = (book: Phrasebook, expected: number): Utterance =>
  question(
    sentences(
      fill(book.ask.sharps.recount, { expected: [numberPart(book, expected)] }),
      fill(book.ask.closing.confirm),
    ),
  );

/** Offers the reasons for a difference one at a time. */
export const askDiscrepancy = (book: Phrasebook, reason: DiscrepancyReason, isFirst: boolean): Utterance =>
  question(sentences(isFirst ? fill(book.ask.discrepancy.first) : [], fill(book.ask.discrepancy.reason[reason])));

export interface Closing {
  readonly balanced: boolean;
  readonly sharpsOpened: number;
  readonly deviations: number;
  readonly stepsLeftOut: number;
}

/** Reads back what will be sealed, and asks for the confirmation phrase. */
export function askClose(book: Phrasebook, closing: Closing): Utterance {
  const { balanced, discrepancy, deviations, leftOut, confirm } = book.ask.closing;
  return question(
    sentences(
      closing.balanced ? fill(balanced, { opened: [numberPart(book, closing.sharpsOpened)] }) : fill(discrepancy),
      counted(book, closing.deviations, deviations),
      counted(book, closing.stepsLeftOut, leftOut),
      fill(confirm),
    ),
  );
}

/** First aid comes before any question. */
export const sayFirstAid = (book: Phrasebook): Utterance => ({
  key: "exposure",
  parts: sentences(fill(book.ask.exposure.firstAid), fill(book.ask.exposure.choice)),
  urgency: "now",
  solicited: true,
});

/** The choice alone, for a second asking. */
export const askExposureChoice = (book: Phrasebook): Utterance => question(fill(book.ask.exposure.choice), "now");

export const askExposureEnd = (book: Phrasebook): Utterance => question(fill(book.ask.exposure.confirmEnd), "now");

/** What a code says of a pack, read back letter by letter: "Needle: lot november dash two. Good until 31 January." */
export function askLot(book: Phrasebook, item: Spoken, lot: string, expiry: string | null): Utterance {
  const { goodUntil, noExpiry, isRight } = book.ask.lot;
  return question(
    sentences(
      fill(book.ask.lot.read, { item: [itemPart(book, item)], lot: spelled(book, lot) }),
      expiry === null ? fill(noExpiry) : fill(goodUntil, { date: dayParts(book, expiry) }),
      fill(isRight),
    ),
  );
}

/** Letters by their code words, so that B and D are told apart in a loud room. */
const spelled = (book: Phrasebook, text: string): readonly Part[] =>
  [...text.toLowerCase()].flatMap((letter, at): readonly Part[] => {
    const word: Part = { kind: "free", text: book.spelling[letter] ?? letter };
    return at === 0 ? [word] : [{ kind: "fixed", text: " " }, word];
  });

/** "Thirty-one January twenty twenty-eight"; a day of another century is spelled as it is written. */
function dayParts(book: Phrasebook, written: string): readonly Part[] {
  const [year = 0, month = 1, day = 1] = written.split("-").map(Number);
  if (year < 2000 || year > 2099) return spelled(book, written);
  return fill(book.dayOf, {
    day: [numberPart(book, day)],
    month: [{ kind: "fixed", text: book.months[month - 1] ?? "" }],
    year: [numberPart(book, year - 2000)],
  });
}

export const askUndo = (book: Phrasebook, what: UndoWhat): Utterance =>
  question(fill(book.ask.undo.question, { what: fill(book.ask.undo.what[what]) }));

/** When unsure between phrases: names the likelier one and asks. */
/** Whoever may be hurt is not kept waiting for the end of a sentence. */
export const askPhrase = (book: Phrasebook, command: CommandId): Utterance =>
  question(
    fill(book.ask.whichPhrase, { phrase: fill(book.ask.phrase[command]) }),
    command === "accident" ? "now" : "soon",
  );
