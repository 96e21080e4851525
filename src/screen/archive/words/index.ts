/** The words of the archive's screens in each language. */
import type { SpokenLanguage } from "../../../announcements/phrasebooks";
import { archiveEn } from "./en";
import { archiveEs } from "./es";

/** Another language has the same shape, or does not compile. */
export type ArchiveWords = typeof archiveEn;

const languages: Readonly<Record<SpokenLanguage, ArchiveWords>> = { en: archiveEn, es: archiveEs };
export const archiveWords = (language: SpokenLanguage): ArchiveWords => languages[language];
