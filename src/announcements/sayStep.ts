/** Steps read aloud: one with its caution in the careful mode; up to five harmless checks together in the brisk one. */
import type { Phase } from "../session/fact";
import type { Step } from "../session/protocol";
import { fill, itemPart, listOf, numberPart, protocolPart, sentences } from "./fill";
import type { Phrasebook } from "./phrasebook";
import { wordsOf } from "./phrasebooks";
import type { Spoken } from "./sayClock";
import { unlessNone } from "./unlessNone";
import type { Part, Utterance } from "./utterance";

export type ReadingMode = "careful" | "brisk";

const read = (book: Phrasebook, step: Step, mode: ReadingMode): readonly Part[] => {
  const say = [protocolPart(wordsOf(step.say, book))];
  if (mode === "brisk" || step.caution === undefined) return say;
  return sentences(say, [protocolPart(wordsOf(step.caution, book))]);
};

/** @param steps one step, or the group that the session chart joined for one answer. */
export const sayStep = (book: Phrasebook, steps: readonly Step[], mode: ReadingMode): Utterance => ({
  key: "step",
  parts: sentences(...steps.map((step) => read(book, step, mode))),
  urgency: "soon",
  solicited: true,
});

export const sayPhase = (book: Phrasebook, phase: Phase): Utterance => ({
  key: "phase",
  parts: fill(book.phase[phase]),
  urgency: "soon",
  solicited: true,
});

/** Answers "where are we now": the step again, or that the companion listens for events. */
export const sayWhatNow = (book: Phrasebook, steps: readonly Step[], mode: ReadingMode): Utterance => ({
  key: "answer",
  parts: steps.length > 0 ? sayStep(book, steps, mode).parts : fill(book.answer.working),
  urgency: "soon",
  solicited: true,
});

export interface WhatIsLeft {
  readonly steps: number;
  /** Not yet safe for the next client. */
  readonly notReady: readonly Spoken[];
  readonly outOfUse: readonly Spoken[];
  /** Opened and neither in the container nor parked. */
  readonly sharpsOut: number;
}

/** Named one by one up to so many; nobody keeps more in mind. */
const mostNamed = 5;

/** Answers "what is remaining": steps, what is not yet safe, by name, and sharps. */
export function sayWhatLeft(book: Phrasebook, left: WhatIsLeft): Utterance {
  const { stepsLeft, sharpsOut } = book.answer;
  const parts = sentences(
    left.steps === 0 ? fill(stepsLeft.none) : counted(book, left.steps, stepsLeft),
    notReadyYet(book, left.notReady),
    unlessNone(book, book.answer.outOfUse, left.outOfUse),
    counted(book, left.sharpsOut, sharpsOut),
  );
  return { key: "answer", parts, urgency: "soon", solicited: true };
}

function notReadyYet(book: Phrasebook, left: readonly Spoken[]): readonly Part[] {
  if (left.length === 0) return [];
  const { all, more } = book.answer.notReady;
  const named = left.slice(0, mostNamed).map((item) => itemPart(book, item));
  if (left.length <= mostNamed) return fill(all, { items: listOf(book, named) });
  const items = named.flatMap((part, i): Part[] => (i === 0 ? [part] : [{ kind: "fixed", text: ", " }, part]));
  return fill(more, { items, count: [numberPart(book, left.length - mostNamed)] });
}

/** Nothing for none, a sentence of its own for one. */
export function counted(book: Phrasebook, count: number, say: { one: string; many: string }): readonly Part[] {
  if (count === 0) return [];
  return count === 1 ? fill(say.one) : fill(say.many, { count: [numberPart(book, count)] });
}
