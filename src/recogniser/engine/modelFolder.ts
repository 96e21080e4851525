/** Where a language's files lie below a folder of `public`: English in the folder itself, each other in one of its own. */
import type { PhraseLanguage } from "../../intent/wording";

/** "" or, as for Spanish, "es/". */
export const folderFor = (language: PhraseLanguage): string => (language === "en" ? "" : `${language}/`);
