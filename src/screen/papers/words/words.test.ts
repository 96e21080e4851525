import { readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { agreedFirstAid, exposureRules } from "../../../due/exposureRules";
import { exposureEs, exposureWords } from "../../../due/exposureWords";
import { papersEn } from "./en";
import { papersEs } from "./es";

/** Every text of a book by its place; what takes figures is asked with ones that any of them takes. */
function textsIn(book: object, at = ""): readonly (readonly [string, string])[] {
  return Object.entries(book).flatMap(([name, value]) => {
    const here = `${at}.${name}`;
    if (typeof value === "string") return [[here, value] as const];
    if (typeof value === "function") return [[here, String(value(7, 8, 9, 6))] as const];
    return textsIn(value, here);
  });
}

/** Words that are the same in both languages, and a figure. */
const alike = new Set([".record.minutes", ".record.app", ".verify.term"]);

test("nothing on paper, of a verdict or of an accident is left in English", () => {
  const english = new Map(textsIn(papersEn));
  const left = textsIn(papersEs).filter(([at, text]) => english.get(at) === text && !alike.has(at));
  expect(left).toEqual([]);
});

/** Every text in words that the verifier's own source can put into "expected" or "found", figures and codes filled in. */
async function saidByTheVerifier(): Promise<readonly string[]> {
  const folder = new URL("../../../export/", import.meta.url);
  const rules = ["clock", "gate", "time", "walk"].map((name) => `replay/${name}Rules.ts`);
  const names = [...rules, "replay/rule.ts", "checkIntact.ts", "checkNotes.ts", "readRecord.ts", "verifyRecord.ts"];
  const sources = await Promise.all(names.map((name) => readFile(new URL(name, folder), "utf8")));
  const stated = sources.flatMap((source) =>
    [...source.matchAll(/\b(?:breach|fault)\([^;]*|(?:expected|found): [^;}]*/g)].flatMap(([part]) =>
      [...part.matchAll(/"([^"\n]+)"|`([^`]+)`/g)].map(([, plain, filled]) => plain ?? filled ?? ""),
    ),
  );
  return [...new Set(stated)]
    .map((text) => text.replace(/\$\{(?:[^{}]|\{[^}]*\})*\}/g, "7"))
    .filter((text) => /^[\w.]+,? /.test(text) && text !== "7 ms");
}

test("what the verifier says in words, it says in Spanish too, whatever a rule comes to say", async () => {
  const texts = await saidByTheVerifier();
  expect(texts.length).toBeGreaterThan(30);
  expect(texts.filter((text) => papersEs.verify.term(text) === text)).toEqual([]);
});

test("codes, figures and digests stay as they are", () => {
  for (const text of ["180000", "v1.GapSeen", '["lamp"]', "ab".repeat(32), "sharps.opened: 1"])
    expect(papersEs.verify.term(text)).toBe(text);
});

test("first aid and due times are said in Spanish, each of them, and their sources stay", () => {
  const { firstAid, what } = exposureWords("es");
  expect(agreedFirstAid.filter((line) => firstAid(line) === line.words)).toEqual([]);
  expect(exposureRules.filter((rule) => what(rule) === rule.what)).toEqual([]);
  expect(exposureWords("es")).toBe(exposureEs);
});
