/** The sentences of the sums in each language. Numbers, codes and what a person typed go in; a sentence comes out. */
import type { SpokenLanguage } from "../../announcements/phrasebooks";
import { sumsEn } from "./en";
import { sumsEs } from "./es";

/** What a language must hold. A missing or an extra entry fails to compile. */
export type SumPhrases = typeof sumsEn;

const books: Readonly<Record<SpokenLanguage, SumPhrases>> = { en: sumsEn, es: sumsEs };

export const sumPhrases = (language: SpokenLanguage): SumPhrases => books[language];
