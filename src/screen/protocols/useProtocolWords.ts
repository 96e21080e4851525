/** The words of the protocol pages in the language of the screen. Fetched with their pages, not before. */
import type { SpokenLanguage } from "../../announcements/languages";
import { useShared } from "../useModel";
import type { ProtocolWords } from "./words";
import { protocolsEn } from "./words/en";
import { protocolsEs } from "./words/es";

const languages: Readonly<Record<SpokenLanguage, ProtocolWords>> = { en: protocolsEn, es: protocolsEs };

export const useProtocolWords = (): ProtocolWords => languages[useShared().language];
