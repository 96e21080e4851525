import { describe, expect, it } from "vitest";
import { languageNames, spokenLanguages } from "../../announcements/languages";
import { wordsFor } from ".";
import { fetchedWords } from "./fetchedWords";

describe("screen words that are fetched", () => {
  it.each(spokenLanguages)("are those of the language asked for: %s", async (language) => {
    const words = fetchedWords();
    await words.fetch(language);
    expect(words.in(language)).toBe(wordsFor(language));
    expect(words.in(language).language).toBe(languageNames[language]);
  });

  it("stay in the language that is here while another cannot be had", async () => {
    const words = fetchedWords({
      en: async () => wordsFor("en"),
      es: () => Promise.reject(new Error("no network")),
    });
    await words.fetch("en");
    await expect(words.fetch("es")).rejects.toThrow("no network");
    expect([words.has("en"), words.has("es")]).toEqual([true, false]);
    expect(words.in("es")).toBe(wordsFor("en"));
  });

  it("are fetched once", async () => {
    let times = 0;
    const words = fetchedWords({
      en: async () => {
        times += 1;
        return wordsFor("en");
      },
      es: async () => wordsFor("es"),
    });
    await words.fetch("en");
    await words.fetch("en");
    expect(times).toBe(1);
  });
});
