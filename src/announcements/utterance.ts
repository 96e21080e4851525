/**
 * What the companion says: a sequence of parts. Each part has a clip rendered beforehand, so that the whole can be
 * spoken on a machine without a single voice of its own; joined, the parts read as the sentence.
 */

/** `text` keeps the punctuation that joins it to its neighbours. */
export type Part =
  | { readonly kind: "fixed"; readonly text: string }
  | { readonly kind: "item"; readonly id: string; readonly text: string }
  | { readonly kind: "number"; readonly value: number; readonly text: string }
  | { readonly kind: "duration"; readonly ms: number; readonly text: string }
  /** A sentence of the protocol. */
  | { readonly kind: "protocol"; readonly text: string }
  /** Anything else, such as a lot; spelled where no voice can read it. */
  | { readonly kind: "free"; readonly text: string };

export type ItemPart = Extract<Part, { kind: "item" }>;

/** Moments of a wet clock that are said together when they fall together: "chair and lamp: time". */
export const clockMoments = ["reapplyDue", "lapsed", "timeUp", "stillWet", "dried", "ready"] as const;
export type ClockMoment = (typeof clockMoments)[number];

/** `now` interrupts; `soon` follows what is being said; `whenQuiet` waits a while for a pause in the talk. */
export type Urgency = "now" | "soon" | "whenQuiet";

export interface Utterance {
  /** A newer utterance with the same key replaces an older one, waiting or being spoken. */
  readonly key: string;
  readonly parts: readonly Part[];
  readonly urgency: Urgency;
  readonly merge?: ClockMoment;
  /** It answers something the artist just said; otherwise it is an interruption. */
  readonly solicited: boolean;
}

/** The sentence as a person would write it: each sentence begins with a capital. */
export function textOf(utterance: Pick<Utterance, "parts">): string {
  const joined = utterance.parts.map((part) => part.text).join("");
  const tidy = joined.replace(/\s+/g, " ").trim();
  return tidy.replace(
    /(^|[.?!] )([¿¡]?\p{Ll})/gu,
    (_, before: string, letter: string) => before + letter.toUpperCase(),
  );
}

/** Words as counted for the published figures: runs of letters, digits, apostrophes and hyphens. */
export const wordsIn = (text: string): number => text.match(/[\p{L}\p{N}][\p{L}\p{N}'’-]*/gu)?.length ?? 0;

export const wordCount = (utterance: Pick<Utterance, "parts">): number => wordsIn(textOf(utterance));
