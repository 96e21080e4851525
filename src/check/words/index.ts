/** The words of a check by language. A language that is spoken and has none here fails to compile. */
import type { SpokenLanguage } from "../../announcements/languages";
import { checkEn } from "./en";
import { checkEs } from "./es";
import type { CheckWords } from "./words";

const languages: Readonly<Record<SpokenLanguage, CheckWords>> = { en: checkEn, es: checkEs };

export const checkWordsFor = (language: SpokenLanguage): CheckWords => languages[language];
export type { CheckWords } from "./words";
