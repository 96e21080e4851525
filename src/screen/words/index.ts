/** The screen words of every language at once: for tests and tools. The app fetches them one by one: `fetchedWords.ts`. */
import type { SpokenLanguage } from "../../announcements/languages";
import { en } from "./en";
import { es } from "./es";
import type { ScreenWords } from "./words";

const languages: Readonly<Record<SpokenLanguage, ScreenWords>> = { en, es };

export const wordsFor = (language: SpokenLanguage): ScreenWords => languages[language];
