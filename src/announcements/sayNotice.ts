/** Refusals, deviations, short echoes and trouble. */
import type { AddressWord, CommandId } from "../intent/phrases";
import type { DeviationCode, RefusalReason } from "../session/fact";
import type { EventId } from "../session/protocol";
import { fill, itemPart, listOf, sentences } from "./fill";
import type { Options } from "./options";
import type { AboutItem, Caution, EarTrouble, Kept, NoteMoment, NotKeptReason, Phrasebook } from "./phrasebook";
import type { Spoken } from "./sayClock";
import { unlessNone } from "./unlessNone";
import type { Part, Urgency, Utterance } from "./utterance";

const notice = (key: string, parts: readonly Part[], urgency: Urgency, solicited: boolean): Utterance => ({
  key,
  parts,
  urgency,
  solicited,
});

const about = (book: Phrasebook, sentence: AboutItem, item: Spoken | null): readonly Part[] =>
  item ? fill(sentence.named, { item: [itemPart(book, item)] }) : fill(sentence.plain);

export const sayRefused = (book: Phrasebook, reason: RefusalReason, item: Spoken | null): Utterance =>
  notice("refused", about(book, book.refused[reason], item), "soon", true);

/** What was taken out of use, or taken back, and so how it counts now: in the words of a refusal, but as an echo. */
export const sayCountsAs = (book: Phrasebook, reason: "outOfUse" | "itemSoiled", item: Spoken): Utterance =>
  notice("echo", about(book, book.refused[reason], item), "soon", true);

type Yes = keyof Phrasebook["mayTouch"]["yes"];

export const sayMayTouch = (book: Phrasebook, because: Yes, item: Spoken): Utterance =>
  notice("answer", fill(book.mayTouch.yes[because], { item: [itemPart(book, item)] }), "soon", true);

/** "No. Lamp: your gloves are soiled. Change them first." */
export const sayMayNotTouch = (book: Phrasebook, reason: RefusalReason, item: Spoken | null): Utterance =>
  notice("answer", sentences(fill(book.mayTouch.no), about(book, book.refused[reason], item)), "soon", true);

/** Those that put somebody at risk this moment interrupt. */
const stopNow: readonly DeviationCode[] = ["skinBrokenWithoutGloves", "usedUnsterile", "sharpNotInSharps"];

export const sayDeviation = (book: Phrasebook, code: DeviationCode, item: Spoken | null): Utterance =>
  sayDeviations(book, code, item ? [item] : []);

/** The same finding on several things is one sentence: "Lamp and chair: touched with soiled gloves." */
export const sayDeviations = (book: Phrasebook, code: DeviationCode, items: readonly Spoken[]): Utterance =>
  notice(
    `deviation:${code}:${items.map((item) => item.id).join()}`,
    items.length === 0
      ? fill(book.deviated[code].plain)
      : fill(book.deviated[code].named, {
          item: listOf(
            book,
            items.map((item) => itemPart(book, item)),
          ),
        }),
    stopNow.includes(code) ? "now" : "soon",
    false,
  );

/** At most three words: "Fresh gloves." A client unwell interrupts everything. */
export const sayEvent = (book: Phrasebook, event: EventId): Utterance =>
  notice("echo", fill(book.event[event]), event === "clientUnwell" ? "now" : "soon", true);

/** "Lamp, noted." once the artist has agreed to the item. */
export const sayItemNoted = (book: Phrasebook, item: Spoken): Utterance =>
  notice("echo", fill(book.eventItem, { item: [itemPart(book, item)] }), "soon", true);

export const sayKept = (book: Phrasebook, kept: Kept): Utterance => notice("echo", fill(book.kept[kept]), "soon", true);

/** At once: somebody waits to speak. */
export const sayNote = (book: Phrasebook, moment: NoteMoment): Utterance =>
  notice(moment === "recording" ? "recording" : "echo", fill(book.note[moment]), "now", true);

export const sayNotKept = (book: Phrasebook, reason: NotKeptReason): Utterance =>
  notice("notKept", fill(book.notKept[reason]), "now", true);

export const sayEarTrouble = (book: Phrasebook, trouble: EarTrouble): Utterance =>
  notice("ear", fill(book.ear.trouble[trouble]), "now", false);

export const sayEarBack = (book: Phrasebook): Utterance => notice("ear", fill(book.ear.back), "soon", false);

export const sayCheck = (book: Phrasebook, what: keyof Phrasebook["ear"]["check"]): Utterance =>
  notice("soundCheck", fill(book.ear.check[what]), "soon", true);

type Teaching = Exclude<keyof Phrasebook["ear"]["teach"], "ask" | "addresses">;
export const sayTeaching = (book: Phrasebook, what: Teaching): Utterance =>
  notice("teach", fill(book.ear.teach[what]), "soon", true);

export const askTake = (book: Phrasebook, address: AddressWord, command: CommandId): Utterance =>
  notice(
    "teach",
    fill(book.ear.teach.ask, {
      address: fill(book.ear.teach.addresses[address]),
      phrase: fill(book.ask.phrase[command]),
    }),
    "soon",
    true,
  );

export const sayVolume = (book: Phrasebook, change: keyof Phrasebook["volume"]): Utterance =>
  notice("volume", fill(book.volume[change]), "soon", true);

/** "You may say: completed, previous step and leave this one out. The screen shows the rest." */
export function sayOptions(book: Phrasebook, { commands, isMore }: Options): Utterance {
  const phrases = listOf(
    book,
    commands.flatMap((command) => fill(book.ask.phrase[command])),
  );
  const { all, more } = book.answer.options;
  return notice("answer", fill(isMore ? more : all, { phrases }), "soon", true);
}

export const sayHoldUp = (book: Phrasebook): Utterance => notice("answer", fill(book.answer.holdUp), "soon", true);

export const sayCaution = (book: Phrasebook, caution: Caution): Utterance =>
  notice(`caution:${caution}`, fill(book.caution[caution]), "soon", true);

export const sayBegun = (book: Phrasebook, carriedOver: readonly Spoken[]): Utterance =>
  notice("begun", sentences(fill(book.begun), unlessNone(book, book.carriedOver, carriedOver)), "soon", true);

export const sayReopened = (book: Phrasebook): Utterance => notice("begun", fill(book.reopened), "soon", true);

/** Said once the seal is on disk. */
export const sayClosed = (book: Phrasebook, balanced: boolean, unready: readonly Spoken[]): Utterance =>
  notice(
    "phase",
    sentences(
      fill(book.phase.closed),
      fill(balanced ? book.closed.balanced : book.closed.discrepancy),
      unlessNone(book, book.closed.unready, unready),
    ),
    "soon",
    true,
  );

export const sayExposure = (book: Phrasebook, moment: keyof Phrasebook["exposure"]): Utterance =>
  notice("exposure", fill(book.exposure[moment]), "soon", true);

export const saySoundCheck = (book: Phrasebook): Utterance => notice("soundCheck", fill(book.soundCheck), "soon", true);
