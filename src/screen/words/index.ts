/** The screen words of each language. A language that is spoken and has no words here fails to compile. */
import { type SpokenLanguage, spokenLanguages } from "../../announcements/phrasebooks";
import { en } from "./en";
import { es } from "./es";
import type { ScreenWords } from "./words";

const languages: Readonly<Record<SpokenLanguage, ScreenWords>> = { en, es };

export const wordsFor = (language: SpokenLanguage): ScreenWords => languages[language];

/** Each language by its own name, so that it is found by those who read no other. */
export const languageChoices = spokenLanguages.map((language) => [language, languages[language].language] as const);
export type { ScreenWords } from "./words";
