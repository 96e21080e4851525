/** The words of the archive's screens in a language; English where they are not translated yet. */
import { archiveEn } from "./en";
import { archiveEs } from "./es";

/** Another language has the same shape, or does not compile. */
export type ArchiveWords = typeof archiveEn;

const languages: Readonly<Record<string, ArchiveWords>> = { en: archiveEn, es: archiveEs };
export const archiveWords = (language: string): ArchiveWords => languages[language] ?? archiveEn;
