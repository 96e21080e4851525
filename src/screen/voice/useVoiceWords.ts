/** The words of the page "Your voice" in the language of the screen. Fetched with their pages, not before. */
import type { SpokenLanguage } from "../../announcements/languages";
import { useShared } from "../useModel";
import type { VoiceWords } from "./words/en";
import { voiceEn } from "./words/en";
import { voiceEs } from "./words/es";

const languages: Readonly<Record<SpokenLanguage, VoiceWords>> = { en: voiceEn, es: voiceEs };

export const useVoiceWords = (): VoiceWords => languages[useShared().language];
