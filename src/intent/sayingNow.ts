/** Which commands' words are part of what is being said: the companion that says "completed" must not hear it. Pure. */
import { type CommandId, commandIds, commands } from "./phrases";

const plain = (text: string) =>
  ` ${text
    .toLowerCase()
    .replace(/[’‘]/g, "'")
    .replace(/[^\p{L}\p{N}' ]+/gu, " ")
    .replace(/\s+/g, " ")
    .trim()} `;

/** Words too small to carry a phrase. */
const small = new Set([
  "a",
  "an",
  "the",
  "of",
  "on",
  "in",
  "it",
  "for",
  "to",
  "and",
  "that",
  "i",
  "my",
  "is",
  "there's",
]);
const wordsOf = (text: string): readonly string[] =>
  plain(text)
    .split(" ")
    .filter((word) => word !== "" && !small.has(word));

/**
 * @param text What is spoken, as a sentence.
 * @returns commands of whose own words, small ones aside, at least half are in it.
 */
export function sayingNow(text: string): readonly CommandId[] {
  const spoken = new Set(wordsOf(text));
  return commandIds.filter((id) => {
    const own = wordsOf(commands[id]);
    return own.length > 0 && own.filter((word) => spoken.has(word)).length * 2 >= own.length;
  });
}
