/** The sums in every language: each figure of the English stands in the others, and each sentence is in words of its own. */
import { describe, expect, it } from "vitest";
import { spokenLanguages } from "../../announcements/phrasebooks";
import { exposureRules } from "../../due/exposureRules";
import { exposureWords } from "../../due/exposureWords";
import { ageView, exposureRows } from "../../due/view";
import { mixView } from "../../mixing/view";
import { places } from "../../places/profiles";
import { placeView } from "../../places/view";
import { cycleView } from "../../steriliser/view";
import { wordsIn } from "../answer";
import { sumPhrases } from ".";

const en = sumPhrases("en");
const others = spokenLanguages.filter((language) => language !== "en");

/** These are given a name out of a closed set, which a stand-in is not. */
const takesNames = /\.(span|second|badValue|counted)$/;

/** Every text of a book by its path; what takes something in is given what stands for it. */
function texts(book: unknown, path = ""): [path: string, text: string][] {
  if (typeof book === "string") return [[path, book]];
  if (takesNames.test(path)) return [];
  if (typeof book === "function") return [[path, String(book(...standIns(book.length)))]];
  return Object.entries(book as object).flatMap(([key, part]) => texts(part, `${path}.${key}`));
}
const standIns = (count: number) =>
  Array.from({ length: count }, (_, at) => (at === count - 1 ? 7001 + at : `⟨${at}⟩`));
/** 0,95 and 0.95 are the same figure. */
const figures = (text: string) =>
  (text.match(/\d+(?:[.,]\d+)*|⟨\d⟩/g) ?? []).map((one) => one.replace(",", ".")).toSorted();

/** The same in both: a unit, a name, a bare pattern of what goes in. */
const alike = [".mixing.label.rules.24-hours", ".steriliser.beside", ".places.texts.municipal"];

describe.each(others)("the sums in %s", (language) => {
  const told = new Map(texts(sumPhrases(language)));
  const english = texts(en);

  it("keep every figure and everything that goes in", () => {
    expect(english.length).toBeGreaterThan(150);
    for (const [path, text] of english) expect([path, figures(told.get(path) ?? "")]).toEqual([path, figures(text)]);
  });

  it("say nothing in English", () => {
    expect(english.filter(([path, text]) => told.get(path) === text && !alike.includes(path))).toEqual([]);
  });
});

describe("what the screens ask of the sums in Spanish", () => {
  const es = sumPhrases("es");
  const mixForm = {
    ...({ kind: "liquid", stock: "5 %", target: "0.1 %", volume: "1 L", companions: [], productName: "A" } as const),
    ...{ madeBy: "AB", madeAtMs: 0, labelHours: "", zone: "UTC" },
  };

  it("is a mix with its cautions, its label and its refusals", () => {
    const mixed = mixView(mixForm, es);
    expect(mixed.ok && mixed.value.spoken).toBe(
      "20 mililitros de concentrado, luego agua hasta 1000 mililitros. No mezclar nunca con nada más.",
    );
    expect(mixed.ok && mixed.value.cautions[0]?.words).toContain("gas tóxico");
    expect(mixed.ok && mixed.value.label.printed[3]).toBe("Usar antes de 1970-01-02 00:00 (24 h)");
    const refused = mixView({ ...mixForm, companions: ["vinegar"] }, es);
    expect(!refused.ok && wordsIn(refused, es)).toBe(
      'Con "vinegar" no. No mezclar nunca con ácidos, amoníaco ni otro limpiador: gas tóxico.',
    );
    expect(!refused.ok && refused.words).toBe(
      'Not with "vinegar". Never mix with acids, ammonia or any other cleaner: toxic gas.',
    );
  });

  it("is where a rule comes from, unless that is a citation", () => {
    const english = new Set(places.flatMap(({ lines }) => lines.map(({ source }) => source)));
    for (const source of Object.values(en.places.sources)) expect(english).toContain(source);
    expect(placeView(places[1] ?? expect.fail(), es).rows[0]?.source).toBe("ley nacional");
  });

  it("is every rule of every place", () => {
    const english = places.flatMap((place) => placeView(place).rows.map(({ says }) => says));
    const spanish = places.flatMap((place) => placeView(place, es).rows.map(({ says }) => says));
    expect(spanish.filter((line, at) => line === english[at])).toEqual([]);
  });

  it("is every time that is due after an accident, an age and the verdict on a cycle", () => {
    const rows = exposureRows(Date.UTC(2026, 10, 25, 7, 40), "UTC", 0, exposureWords("es"));
    expect(rows).toHaveLength(exposureRules.length);
    expect(rows[0]?.words).toContain("salud laboral o urgencias");
    const [place] = places;
    const age = place && ageView({ born: "2010-01-01", on: { year: 2026, month: 11, day: 26 }, place }, es);
    expect(age?.ok && age.value.words).toBe("16 años el 2026-11-26: no tiene la edad (18) hasta el 2028-01-01.");
    const form = { bandId: "en-134", cycleClass: "B", load: ["porous"], statedByMaker: [], choice: {} } as const;
    const cycle = cycleView({ ...form, csv: "time_s,temperature_c\n0,135\n1,135" }, es);
    expect(cycle.ok && cycle.value.words).toMatch(/^NO mantuvo: hace falta 134-137 °C durante 3 min/);
  });
});
