/** The words on paper in a language. */
import type { SpokenLanguage } from "../../../announcements/phrasebooks";
import { papersEn } from "./en";
import { papersEs } from "./es";

/** Another language has the same shape, or does not compile. */
export type PaperWords = typeof papersEn;

const languages: Readonly<Record<SpokenLanguage, PaperWords>> = { en: papersEn, es: papersEs };
export const paperWords = (language: SpokenLanguage): PaperWords => languages[language];
