/** The words on paper in a language; English where they are not translated yet. */
import { papersEn } from "./en";

/** Another language has the same shape, or does not compile. */
export type PaperWords = typeof papersEn;

const languages: Readonly<Record<string, PaperWords>> = { en: papersEn };
export const paperWords = (language: string): PaperWords => languages[language] ?? papersEn;
