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
const alike = new Set([".record.minutes", ".record.app"]);

test("nothing on paper, of a verdict or of an accident is left in English", () => {
  const english = new Map(textsIn(papersEn));
  const left = textsIn(papersEs).filter(([at, text]) => english.get(at) === text && !alike.has(at));
  expect(left).toEqual([]);
});

test("first aid and due times are said in Spanish, each of them, and their sources stay", () => {
  const { firstAid, what } = exposureWords("es");
  expect(agreedFirstAid.filter((line) => firstAid(line) === line.words)).toEqual([]);
  expect(exposureRules.filter((rule) => what(rule) === rule.what)).toEqual([]);
  expect(exposureWords("es")).toBe(exposureEs);
});
