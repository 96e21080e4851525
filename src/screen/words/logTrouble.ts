/** Why the log kept, read or began nothing, in the words of the screen. */
import type { ScreenWords } from "./words";

/** @param code of a trouble from anywhere; what has no words of its own has failed on the way. */
export function logTrouble({ logTrouble: words }: ScreenWords, code: string): string {
  return Object.hasOwn(words, code) ? words[code as keyof typeof words] : words.failed;
}
