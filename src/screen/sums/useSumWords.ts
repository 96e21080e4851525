/** The words of the studio's screens in the language of the screen. Fetched with their pages, not before. */
import type { SpokenLanguage } from "../../announcements/languages";
import { useShared } from "../useModel";
import type { SumWords } from "./words";
import { sumsEn } from "./words/en";
import { sumsEs } from "./words/es";

const languages: Readonly<Record<SpokenLanguage, SumWords>> = { en: sumsEn, es: sumsEs };

export const useSumWords = (): SumWords => languages[useShared().language];
