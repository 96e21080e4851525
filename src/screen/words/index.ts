/** The screen words of a language; English where the screens do not speak it yet. */
import { en } from "./en";
import { es } from "./es";
import type { ScreenWords } from "./words";

const languages: Readonly<Record<string, ScreenWords>> = { en, es };

export const wordsFor = (language: string): ScreenWords => languages[language] ?? en;
export type { ScreenWords } from "./words";
