/** A phrase as it is said, and back: "station previous step" ⇄ { address: "station", command: "back" }. */
import { type AddressWord, addressWords, type CommandId, commandIds } from "./phrases";
import { type PhraseLanguage, phraseLanguages, wordings } from "./wording";

export interface Addressed {
  readonly address: AddressWord;
  readonly command: CommandId;
}

const plain = (words: string) =>
  words
    .toLowerCase()
    .replace(/[’‘]/g, "'")
    .replace(/[^\p{L}\p{N}' ]+/gu, " ")
    .trim()
    .replace(/\s+/g, " ");

const known = new Map<string, Addressed>(
  phraseLanguages.flatMap((language) =>
    addressWords.flatMap((address) =>
      commandIds.map((command) => [plain(spoken(address, command, language)), { address, command }] as const),
    ),
  ),
);

/** The words of a command behind the station's address word, in one language. */
export function spoken(address: AddressWord, command: CommandId, language: PhraseLanguage = "en"): string {
  const { addresses, commands } = wordings[language];
  return `${addresses[address]} ${commands[command]}`;
}

/**
 * Who is addressed and what is asked, in whichever language; null if the words are not exactly one of our phrases. Case, punctuation and
 * spacing do not matter; words before or after do, because chat about a phrase is not the phrase.
 */
export function parse(transcript: string): Addressed | null {
  return known.get(plain(transcript)) ?? null;
}
