/** What the companion says in each language it speaks, and the words of a protocol in one of them. */
import type { Text } from "../session/protocol";
import { en } from "./en";
import { es } from "./es";
import { type SpokenLanguage, spokenOr } from "./languages";
import type { Phrasebook } from "./phrasebook";

export { type SpokenLanguage, spokenLanguages } from "./languages";

const books: Readonly<Record<SpokenLanguage, Phrasebook>> = { en, es };

/** English where the companion does not speak the language yet. */
export const bookFor = (language: string): Phrasebook => books[spokenOr(language)];

/** A protocol's own words; English is always there. */
export const wordsOf = (text: Text, book: Phrasebook): string => text[book.language] ?? text.en;
