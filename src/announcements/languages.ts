/** The languages the companion speaks, without their words: those are fetched when they are needed. */

/** Adding a language here demands its phrasebook, its screen words and its own name. */
export const spokenLanguages = ["en", "es"] as const;
export type SpokenLanguage = (typeof spokenLanguages)[number];

/** Each by its own name, so that it is found by those who read no other. */
export const languageNames: Readonly<Record<SpokenLanguage, string>> = { en: "English", es: "Español" };

/** English where the companion does not speak the language yet. */
export const spokenOr = (language: string): SpokenLanguage =>
  spokenLanguages.find((spoken) => spoken === language) ?? "en";
