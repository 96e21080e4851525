/** Screen words, a language at a time: nobody waits for a language that is not read here. */
import { languageNames, type SpokenLanguage, spokenLanguages } from "../../announcements/languages";
import type { ScreenWords } from "./words";

/** A language that is spoken and has no words here fails to compile. */
const sources: Readonly<Record<SpokenLanguage, () => Promise<ScreenWords>>> = {
  en: async () => (await import("./en")).en,
  es: async () => (await import("./es")).es,
};

export interface FetchedWords {
  /** Rejects where they cannot be had. At once where they are here already. */
  fetch(language: SpokenLanguage): Promise<void>;
  has(language: SpokenLanguage): boolean;
  /** Those of another language while they are not here; what asks for a language fetches it first. */
  in(language: SpokenLanguage): ScreenWords;
}

export function fetchedWords(from = sources): FetchedWords {
  const here = new Map<SpokenLanguage, ScreenWords>();
  return {
    async fetch(language) {
      if (!here.has(language)) here.set(language, await from[language]());
    },
    has: (language) => here.has(language),
    in(language) {
      const words = here.get(language) ?? [...here.values()][0];
      if (!words) throw new Error("screen words are shown before any were fetched");
      return words;
    },
  };
}

export const languageChoices = spokenLanguages.map((language) => [language, languageNames[language]] as const);
