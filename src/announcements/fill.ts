/** From a sentence with slots to the parts that are spoken: "{items}: time." with chair and lamp. */
import type { Item } from "../session/protocol";
import type { Phrasebook } from "./phrasebook";
import { wordsOf } from "./phrasebooks";
import type { ItemPart, Part } from "./utterance";

const slot = /\{(\w+)\}/;

/** Pieces of a sentence in order: fixed text at even places, slot names at odd ones. */
export const piecesOf = (sentence: string): readonly string[] => sentence.split(slot);

/** @param values what stands in each slot; a slot without a value is our mistake and throws. */
export function fill(sentence: string, values: Readonly<Record<string, readonly Part[]>> = {}): readonly Part[] {
  return piecesOf(sentence).flatMap((piece, place): readonly Part[] => {
    if (place % 2 === 0) return piece === "" ? [] : [{ kind: "fixed", text: piece }];
    const value = values[piece];
    if (value === undefined) throw new Error(`nothing given for {${piece}} in "${sentence}"`);
    return value;
  });
}

export const itemPart = (book: Phrasebook, item: Pick<Item, "id" | "calledAs">): ItemPart => ({
  kind: "item",
  id: item.id,
  text: wordsOf(item.calledAs, book),
});

export const numberPart = (book: Phrasebook, value: number): Part => ({
  kind: "number",
  value,
  text: book.number(value),
});

export const durationPart = (book: Phrasebook, ms: number): Part => ({ kind: "duration", ms, text: book.duration(ms) });

export const protocolPart = (text: string): Part => ({ kind: "protocol", text });

/** "chair", "chair and lamp", "chair, lamp and tray". */
export function listOf(book: Phrasebook, parts: readonly Part[]): readonly Part[] {
  return parts.flatMap((part, place): readonly Part[] => {
    if (place === 0) return [part];
    const isLast = place === parts.length - 1;
    return [{ kind: "fixed", text: isLast ? ` ${book.listAnd} ` : ", " }, part];
  });
}

/** Sentences one after another. */
export const sentences = (...each: readonly (readonly Part[])[]): readonly Part[] =>
  each
    .filter((parts) => parts.length > 0)
    .flatMap((parts, place) => (place === 0 ? parts : [{ kind: "fixed" as const, text: " " }, ...parts]));
