/** Wet clocks aloud. The start is an earcon only; the rest on "how long". */
import type { Item } from "../session/protocol";
import { durationPart, fill, itemPart, listOf, sentences } from "./fill";
import type { Phrasebook } from "./phrasebook";
import type { ClockMoment, ItemPart, Part, Urgency, Utterance } from "./utterance";

export type Spoken = Pick<Item, "id" | "calledAs">;

/** Re-applying has a deadline and follows at once; time that is up only makes things safer, and waits for a pause. */
const urgency: Readonly<Record<ClockMoment, Urgency>> = {
  reapplyDue: "soon",
  lapsed: "soon",
  timeUp: "whenQuiet",
  stillWet: "soon",
  dried: "soon",
  ready: "soon",
};

const answersTheArtist: readonly ClockMoment[] = ["dried", "ready"];

/** "Chair and lamp: time. Stayed wet?" */
export const sayClock = (book: Phrasebook, moment: ClockMoment, items: readonly Spoken[]): Utterance =>
  clockUtterance(
    book,
    moment,
    items.map((item) => itemPart(book, item)),
  );

export const clockUtterance = (book: Phrasebook, moment: ClockMoment, items: readonly ItemPart[]): Utterance => ({
  key: `${moment}:${items.map((item) => item.id).join("+")}`,
  parts: fill(book.clock[moment], { items: listOf(book, items) }),
  urgency: urgency[moment],
  merge: moment,
  solicited: answersTheArtist.includes(moment),
});

export const sayTimeUp = (book: Phrasebook, items: readonly Spoken[]): Utterance => sayClock(book, "timeUp", items);

/** "One minute short, wet it once more." Named where more than one surface is in question. */
export const sayWipedEarly = (book: Phrasebook, shortByMs: number, item: Spoken | null): Utterance => {
  const duration = [durationPart(book, shortByMs)];
  return {
    key: `wipedEarly:${item?.id ?? ""}`,
    parts: item
      ? fill(book.wipedEarly.named, { item: [itemPart(book, item)], duration })
      : fill(book.wipedEarly.plain, { duration }),
    urgency: "soon",
    solicited: true,
  };
};

export interface ClockLeft {
  readonly item: Spoken;
  /** 0 when the time is up and the yes is still missing. */
  readonly leftMs: number;
}

/** Answers "how long". The shortest first. */
export function sayHowLong(book: Phrasebook, clocks: readonly ClockLeft[]): Utterance {
  const soonestFirst = clocks.toSorted((a, b) => a.leftMs - b.leftMs);
  const each = soonestFirst.map(({ item, leftMs }): readonly Part[] =>
    leftMs > 0
      ? fill(book.answer.remaining, { item: [itemPart(book, item)], duration: [durationPart(book, leftMs)] })
      : fill(book.answer.waiting, { item: [itemPart(book, item)] }),
  );
  const parts = each.length > 0 ? sentences(...each) : fill(book.answer.noClock);
  return { key: "answer", parts, urgency: "soon", solicited: true };
}
