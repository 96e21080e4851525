/** The words of the personal part in a language; English where a record asks for one that is not there. */
import { personalEn } from "./en";
import { personalEs } from "./es";

/** Another language has the same shape, or does not compile. */
export type PersonalWords = typeof personalEn;

const languages: Readonly<Record<string, PersonalWords>> = { en: personalEn, es: personalEs };
export const personalWords = (language: string): PersonalWords => languages[language] ?? personalEn;
