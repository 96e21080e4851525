/** An answer or a refusal. Expected trouble is a value with a closed code and one plain sentence, never an exception. */
import type { SumPhrases } from "./phrases";
import { sumsEn } from "./phrases/en";

export type Refusal<Code extends string> = {
  readonly ok: false;
  /** Closed set, for the program to act on. */
  readonly code: Code;
  /** One sentence, no line breaks, for a person, in English. */
  readonly words: string;
  /** The same in another language; missing where the sentence is for the command line alone. */
  readonly said?: Says;
};

/** A sentence, whatever the language. */
export type Says = (phrases: SumPhrases) => string;

export type Answer<T, Code extends string> = { readonly ok: true; readonly value: T } | Refusal<Code>;

export function answer<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

/** @param words of the command line alone, or the sentence in every language. */
export function refuse<Code extends string>(code: Code, words: string | Says): Refusal<Code> {
  if (typeof words === "string") return { ok: false, code, words };
  const refusal: Refusal<Code> = { ok: false, code, words: words(sumsEn) };
  // Not part of the value: it is compared and printed by its code and its English.
  return Object.defineProperty(refusal, "said", { value: words });
}

/** The refusal's sentence in a language. */
export const wordsIn = (refusal: Refusal<string>, phrases: SumPhrases): string =>
  refusal.said?.(phrases) ?? refusal.words;

/**
 * Text from outside, made safe to repeat inside one line: quoted, printable, at most 60 characters.
 * Control characters and line separators become spaces, so nothing a user typed can forge a second line.
 */
export function quoted(text: string): string {
  const printable = text.replace(/[\p{C}\u2028\u2029]/gu, " ");
  const short = printable.length > 60 ? `${printable.slice(0, 57)}...` : printable;
  return `"${short.toWellFormed()}"`;
}
