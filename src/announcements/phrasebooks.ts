/** The languages the companion speaks, and the words of a protocol in one of them. */
import type { Text } from "../session/protocol";
import { en } from "./en";
import { es } from "./es";
import type { Phrasebook } from "./phrasebook";

/** Adding a language here demands its phrasebook below. */
export const spokenLanguages = ["en", "es"] as const;
export type SpokenLanguage = (typeof spokenLanguages)[number];

const books: Readonly<Record<SpokenLanguage, Phrasebook>> = { en, es };

/** English where the companion does not speak the language yet. */
export const bookFor = (language: string): Phrasebook =>
  books[spokenLanguages.find((spoken) => spoken === language) ?? "en"];

/** A protocol's own words; English is always there. */
export const wordsOf = (text: Text, book: Phrasebook): string => text[book.language] ?? text.en;
