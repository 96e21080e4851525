/** Place profiles: every line has a source, nothing unsure looks sure, and a studio can put its own in place of any. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { date, showDate } from "../due/calendar";
import { keepUntil } from "../due/retention";
import { PlaceProfile } from "./line";
import { placeById, places, retentionRules, ruleOf, silentOn, unconfirmed, withOverrides } from "./profiles";
import { placeView } from "./view";

function place(id: string): PlaceProfile {
  const found = placeById(id);
  if (!found.ok) throw new Error(found.words);
  return found.value;
}

describe("bundled places", () => {
  it("are valid, with ids of their own", () => {
    expect(places.map((p) => PlaceProfile.safeParse(p).success)).toEqual(places.map(() => true));
    expect(new Set(places.map((p) => p.id)).size).toBe(places.length);
  });

  it("mark every line that is not confirmed, and always say they are not legal advice", () => {
    const marks = places.map((p) =>
      placeView(p)
        .rows.filter((row) => row.mark !== null)
        .map((row) => row.id),
    );
    expect(marks).toEqual(places.map((p) => unconfirmed(p).map((line) => line.id)));
    expect(places.map((p) => placeView(p).caution)).toEqual(
      places.map(() => expect.stringContaining("not legal advice")),
    );
  });

  it("keeps California's logs three years and its questionnaire two (HSC 119315; AB 1168 digest)", () => {
    const rules = retentionRules(place("california"));
    const from = date("2026-11-25");
    const until = (kind: keyof typeof rules) => {
      const rule = rules[kind];
      return rule ? showDate(keepUntil(rule, from)) : "unknown";
    };
    expect([
      until("steriliser-log"),
      until("biological-test-log"),
      until("health-questionnaire"),
      until("pre-sterilised-purchase"),
      until("client-record"),
    ]).toEqual(["2029-11-25", "2029-11-25", "2028-11-25", "2027-02-23", "unknown"]);
  });

  it("keeps consent two years in New York City and client records three in Madison County", () => {
    expect(retentionRules(place("new-york-city"))["client-record"]).toMatchObject({ keep: { years: 2 } });
    expect(retentionRules(place("madison-county-illinois"))["client-record"]).toMatchObject({ keep: { years: 3 } });
  });

  it("gives no number for what is not confirmed: client records in Texas and Great Britain", () => {
    expect(silentOn(place("texas"))).toContain("client-record");
    expect(silentOn(place("great-britain"))).toContain("client-record");
    expect(placeView(place("texas")).rows.find((row) => row.id === "keep.client-record")).toMatchObject({
      says: expect.stringContaining("look it up"),
      mark: "not confirmed",
    });
  });

  it("says of a line without a value what it is about", () => {
    const unknown = placeView(place("elsewhere")).rows.filter(({ says }) => says.includes("not known here"));
    expect(unknown.map(({ says }) => says.split(": not")[0])).toEqual([
      "how long to keep: client record",
      "how long to keep: steriliser log",
      "waste: infectious",
    ]);
  });

  it("tests weekly by CDC and monthly by California, either of the two published frequencies", () => {
    expect(ruleOf(place("texas"), "biological-test")?.every).toEqual({ weeks: 1 });
    expect(ruleOf(place("california"), "biological-test")).toMatchObject({
      every: { months: 1 },
      alsoAfter: ["installation", "major repair"],
    });
  });

  it("reports an infection within five working days in Texas (25 TAC 229.410)", () => {
    expect(ruleOf(place("texas"), "report")).toMatchObject({ workingDays: 5 });
  });

  it("states ink limits whose percent and ppm agree (REACH entry 75: 0.00005 % = 0.5 ppm, 0.001 % = 10 ppm)", () => {
    const says = placeView(place("european-union"))
      .rows.map((row) => row.says)
      .join("\n");
    const pairs = [...says.matchAll(/([\d.]+) %[^(\n]*\(([\d.]+) ppm/g)].map((pair) => [
      Number(pair[1]) * 10_000,
      Number(pair[2]),
    ]);
    expect(pairs).toHaveLength(5);
    for (const [fromPercent, ppm] of pairs) expect(fromPercent).toBeCloseTo(ppm ?? Number.NaN, 9);
  });

  it("refuses a place it does not know", () => {
    expect(placeById("atlantis")).toMatchObject({ ok: false, code: "unknown-place" });
  });
});

describe("a studio's own lines", () => {
  const own = { lineId: "age.minimum", value: { kind: "age", minimumYears: 21 }, reason: "house rule", year: 2026 };

  it("replace the line and are marked as the studio's own", () => {
    const mine = withOverrides(place("texas"), [own]);
    expect(mine.ok && ruleOf(mine.value, "age")).toEqual({ kind: "age", minimumYears: 21 });
    expect(mine.ok && placeView(mine.value).rows.find((row) => row.id === "age.minimum")?.mark).toBe("studio's own");
    expect(ruleOf(place("texas"), "age")?.minimumYears).toBe(18);
  });

  it("can fill in what was not known", () => {
    const value = { kind: "keep", record: "client-record", keep: { years: 7 }, from: "record date" };
    const mine = withOverrides(place("texas"), [
      { lineId: "keep.client-record", value, reason: "our insurer", year: 2026 },
    ]);
    expect(mine.ok && silentOn(mine.value)).not.toContain("client-record");
  });

  it.each([
    [{ ...own, value: { kind: "age", minimumYears: -1 } }],
    [{ ...own, value: { kind: "sharps-fill", share: 0.5 } }],
    [{ ...own, reason: " " }],
    [{ ...own, value: null }],
  ])("are refused when they cannot be read, change the subject or give no reason (%#)", (override) => {
    expect(withOverrides(place("texas"), [override])).toMatchObject({ ok: false, code: "bad-override" });
  });

  property.prop([fc.constantFrom(...places), fc.anything()])("never throw, whatever the value", (base, value) => {
    const mine = withOverrides(base, [{ ...own, value }]);
    expect(mine.ok || mine.code === "bad-override").toBe(true);
  });
});
