import { describe, expect, test } from "vitest";
import { phraseLanguages, wordings } from "./wording";

const plain = (words: string) => words.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
/** Vowels that are said apart: a rough count of syllables, enough to find a phrase that is too short. */
const syllables = (words: string) => plain(words).match(/[aeiouy]+/g)?.length ?? 0;

describe.each(phraseLanguages)("phrases in %s", (language) => {
  const { addresses, commands } = wordings[language];
  const all = [...Object.values(addresses), ...Object.values(commands)].map(plain);

  test("are all different", () => {
    expect(new Set(all).size).toBe(all.length);
  });

  test("are never one short word, for those are heard worst", () => {
    expect(Object.values(commands).filter((words) => syllables(words) < 3)).toEqual([]);
  });

  test("never contain an address word", () => {
    const words = Object.values(commands).flatMap((said) => plain(said).split(" "));
    expect(Object.values(addresses).filter((address) => words.includes(plain(address)))).toEqual([]);
  });
});
