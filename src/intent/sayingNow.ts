/** Which commands' words are part of what is being said: the companion that says "completed" must not hear it. Pure. */
import { type CommandId, commandIds } from "./phrases";
import { type PhraseLanguage, wordings } from "./wording";

/** Words too small to carry a phrase. */
const small: Readonly<Record<PhraseLanguage, ReadonlySet<string>>> = {
  en: new Set(["a", "an", "the", "of", "on", "in", "it", "for", "to", "and", "that", "i", "my", "is", "there's"]),
  es: new Set([
    "a",
    "al",
    "de",
    "del",
    "el",
    "ella",
    "ello",
    "en",
    "es",
    "la",
    "lo",
    "me",
    "por",
    "se",
    "un",
    "una",
    "y",
  ]),
};

const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[’‘]/g, "'")
    .replace(/[^\p{L}\p{N}' ]+/gu, " ");

const wordsOf = (text: string, language: PhraseLanguage): readonly string[] =>
  plain(text)
    .split(/\s+/)
    .filter((word) => word !== "" && !small[language].has(word));

/**
 * @param text What is spoken, as a sentence, in this language.
 * @returns commands of whose own words, small ones aside, at least half are in it.
 */
export function sayingNow(text: string, language: PhraseLanguage): readonly CommandId[] {
  const spoken = new Set(wordsOf(text, language));
  return commandIds.filter((id) => {
    const own = wordsOf(wordings[language].commands[id], language);
    return own.length > 0 && own.filter((word) => spoken.has(word)).length * 2 >= own.length;
  });
}

export interface PieceInTheAir {
  readonly text: string;
  /** When the next one began. */
  readonly endedAtMs: number;
}

/** How long a phrase of which a piece was the end may still be heard: the room rings, and the ear takes its time. Our own choice. */
export const lingersMs = 700;

/** @returns the pieces whose words may be in the microphone when `text` begins: it, the one before, and what ended just now. */
export function stillInTheAir(before: readonly PieceInTheAir[], text: string, nowMs: number): readonly PieceInTheAir[] {
  const ended = before.map((piece) =>
    piece.endedAtMs === Number.POSITIVE_INFINITY ? { ...piece, endedAtMs: nowMs } : piece,
  );
  return [
    ...ended.filter((piece) => nowMs - piece.endedAtMs < lingersMs),
    { text, endedAtMs: Number.POSITIVE_INFINITY },
  ];
}
