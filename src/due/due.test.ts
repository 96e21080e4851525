/** Exposure deadlines, the age gate and retention, by published rule and by property. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it, test } from "vitest";
import { ageGate, ageOn } from "./age";
import { addDays, compareDates, date, dayNumber, fromDayNumber, showDate } from "./calendar";
import { type Duration, dueAfter } from "./duration";
import { exposureDue, showExposureDue, standing } from "./exposure";
import { riskFigures, showRisk } from "./exposureRisk";
import { agreedFirstAid, exposureRules } from "./exposureRules";
import { keepUntil, retentionDue } from "./retention";

const accidentMs = Date.parse("2026-11-25T06:40:00Z");
const anyDay = fc
  .integer({ min: dayNumber(date("1920-01-01")), max: dayNumber(date("2080-12-31")) })
  .map(fromDayNumber);
const anyInstant = fc.integer({ min: Date.UTC(2000, 0, 1), max: Date.UTC(2080, 0, 1) });
const anyZone = fc.constantFrom("UTC", "Europe/London", "America/New_York", "Australia/Lord_Howe", "Pacific/Auckland");

function due(id: string, zone = "UTC", at = accidentMs): string {
  const found = exposureDue(at, zone).find((line) => line.rule.id === id);
  return found ? new Date(found.dueMs).toISOString() : "no such rule";
}

describe("after an exposure", () => {
  // Elapsed seconds and UTC instants by ISO 8601 durations from 2026-11-25T06:40:00Z.
  test.each<[string, Duration, number, string]>([
    ["PT24H", { hours: 24 }, 86_400, "2026-11-26T06:40:00.000Z"],
    ["PT48H", { hours: 48 }, 172_800, "2026-11-27T06:40:00.000Z"],
    ["PT72H", { hours: 72 }, 259_200, "2026-11-28T06:40:00.000Z"],
    ["P7D", { days: 7 }, 604_800, "2026-12-02T06:40:00.000Z"],
    ["P3W", { weeks: 3 }, 1_814_400, "2026-12-16T06:40:00.000Z"],
    ["P28D", { days: 28 }, 2_419_200, "2026-12-23T06:40:00.000Z"],
    ["P6W", { weeks: 6 }, 3_628_800, "2027-01-06T06:40:00.000Z"],
    ["P12W", { weeks: 12 }, 7_257_600, "2027-02-17T06:40:00.000Z"],
  ])("%s is due at its instant in UTC", (_iso, duration, seconds, instant) => {
    expect(dueAfter(accidentMs, duration, "UTC")).toBe(accidentMs + seconds * 1000);
    expect(new Date(dueAfter(accidentMs, duration, "UTC")).toISOString()).toBe(instant);
  });

  it("gives HIV medicine 24 h ideally and 72 h at the latest (CDC nPEP 2025, MMWR 74(RR-1))", () => {
    expect(due("hiv-pep-ideal")).toBe("2026-11-26T06:40:00.000Z");
    expect(due("hiv-pep-latest")).toBe("2026-11-28T06:40:00.000Z");
  });

  it("gives hepatitis C testing 48 h, 3-6 weeks and 4-6 months (MMWR 69(RR-6), 2020)", () => {
    expect(due("hcv-baseline")).toBe("2026-11-27T06:40:00.000Z");
    expect(due("hcv-nat")).toBe("2027-01-06T06:40:00.000Z");
    expect(due("hcv-final")).toBe("2027-05-25T06:40:00.000Z");
    expect(exposureDue(accidentMs, "UTC").find((line) => line.rule.id === "hcv-final")?.fromMs).toBe(
      Date.parse("2027-03-25T06:40:00Z"),
    );
  });

  it("counts hours as elapsed and days on the wall when the clocks go back", () => {
    const before = Date.parse("2026-10-24T12:00:00+02:00");
    expect(due("hiv-pep-ideal", "Europe/Berlin", before)).toBe("2026-10-25T10:00:00.000Z"); // 11:00 on the wall
    expect(due("hbv-globulin-limit", "Europe/Berlin", before)).toBe("2026-10-31T11:00:00.000Z"); // 12:00 on the wall
  });

  it("puts a clinician first and shows source and year, and what is only remembered", () => {
    const lines = exposureDue(accidentMs, "Europe/Berlin").map((line) => showExposureDue(line, "Europe/Berlin"));
    expect(lines[0]).toContain("occupational health or emergency department");
    expect(lines.find((line) => line.includes("at the latest"))).toBe(
      "2026-11-28 07:40  first dose of HIV post-exposure medicine, at the latest [CDC nPEP, MMWR 74(RR-1), 2025]",
    );
    expect(lines.filter((line) => line.includes("from memory"))).toHaveLength(
      exposureRules.filter((rule) => rule.status === "from memory").length,
    );
  });

  it("knows what is not yet open, open and passed", () => {
    const nat = exposureDue(accidentMs, "UTC").find((line) => line.rule.id === "hcv-nat");
    const at = (ms: number) => nat && standing(nat, ms);
    expect([
      at(accidentMs),
      at(Date.parse("2026-12-16T06:40:00Z")),
      at(Date.parse("2027-01-06T06:40:00.001Z")),
    ]).toEqual(["not yet open", "open", "passed"]);
  });

  property.prop([anyInstant, anyZone])("is never due before its rule says", (ms, zone) => {
    const hours = exposureDue(ms, zone).filter((line) => "hours" in line.rule.until);
    expect(hours.every((line) => line.dueMs - ms === Number(Object.values(line.rule.until)[0]) * 3_600_000)).toBe(true);
    expect(exposureDue(ms, zone).every((line) => line.dueMs > ms && (line.fromMs ?? ms) < line.dueMs)).toBe(true);
  });

  it("says only what every source agrees on as first aid: wash, no scrubbing, no sucking, no bleach", () => {
    const all = agreedFirstAid.map((line) => line.words).join(" ");
    expect(all).toMatch(/soap and water/);
    expect(all).toMatch(/not scrub.*not suck.*no bleach/);
    expect(all).not.toMatch(/bleed|squeeze/); // HSE says encourage bleeding, WHO says do not squeeze
  });

  it("never gives one number for hepatitis C, and no figure without year and source", () => {
    expect(riskFigures("HCV").map((figure) => figure.percent)).toEqual(["1.8 (0-7)", "0.2", "7.4 (3.9-12.5)"]);
    const shown = (["HBV", "HCV", "HIV"] as const).flatMap(riskFigures).map((figure) => showRisk(figure));
    expect(shown.every((line) => /\[.+, (\d{4}|undated)(, from memory)?\]$/.test(line))).toBe(true);
  });
});

describe("the age gate", () => {
  const on = date("2026-11-25");

  it("lets in on the eighteenth birthday and refuses the day before (Tattooing of Minors Act 1969, Great Britain)", () => {
    expect(ageGate(date("2008-11-25"), on, 18)).toMatchObject({ value: { allowed: true, years: 18 } });
    expect(ageGate(date("2008-11-26"), on, 18)).toMatchObject({
      value: { allowed: false, years: 17, oldEnoughOn: date("2026-11-26") },
    });
  });

  it("brings someone born on 29 February of age on 1 March (UK, from memory)", () => {
    expect(ageGate(date("2008-02-29"), date("2026-02-28"), 18)).toMatchObject({ value: { allowed: false } });
    expect(ageGate(date("2008-02-29"), date("2026-03-01"), 18)).toMatchObject({ value: { allowed: true } });
    expect(ageOn(date("2008-02-29"), date("2028-02-29"))).toBe(20);
  });

  it("does not answer for a birth that has not come, or one too long ago", () => {
    expect(ageGate(date("2026-11-26"), on, 18)).toMatchObject({ ok: false, code: "born-later" });
    expect(ageGate(date("1900-01-01"), on, 18)).toMatchObject({ ok: false, code: "age-unlikely" });
  });

  property.prop([anyDay, fc.integer({ min: 0, max: 100 })])(
    "turns exactly once: refused the day before, let in on the day",
    (born, minimum) => {
      const gate = ageGate(born, born, minimum);
      const turns = gate.ok ? gate.value.oldEnoughOn : born;
      expect(ageOn(born, turns)).toBe(minimum);
      expect(ageOn(born, addDays(turns, -1))).toBe(minimum - 1);
    },
  );
});

describe("retention", () => {
  it("keeps 3 years by the calendar, and longer where the day does not exist", () => {
    const three = { keep: { years: 3 }, from: "record date" } as const;
    expect(showDate(keepUntil(three, date("2026-11-25")))).toBe("2029-11-25");
    expect(showDate(keepUntil(three, date("2024-02-29")))).toBe("2027-03-01");
  });

  it("keeps a staff medical record 30 years after leaving (29 CFR 1910.1030 (h)(1)(iv))", () => {
    expect(showDate(keepUntil({ keep: { years: 30 }, from: "end of employment" }, date("2026-12-31")))).toBe(
      "2056-12-31",
    );
  });

  it("counts a sharps log's 5 years from the end of its year (29 CFR 1904.33)", () => {
    expect(showDate(keepUntil({ keep: { years: 5 }, from: "end of the year" }, date("2026-11-25")))).toBe("2031-12-31");
  });

  it("lists what may go, soonest first, and keeps what has no rule", () => {
    const records = [
      { id: "a", kind: "client-record", startsOn: date("2020-01-01") },
      { id: "b", kind: "steriliser-log", startsOn: date("2023-11-25") },
      { id: "c", kind: "steriliser-log", startsOn: date("2023-11-24") },
    ] as const;
    const list = retentionDue(
      records,
      { "steriliser-log": { keep: { years: 3 }, from: "record date" } },
      date("2026-11-25"),
    );
    expect(list.map((line) => [line.record.id, line.state])).toEqual([
      ["c", "may be deleted"],
      ["b", "keep"],
      ["a", "keep: no rule known"],
    ]);
  });

  property.prop([anyDay, fc.integer({ min: 0, max: 40 })])("never lets a record go before the rule", (start, years) => {
    const last = keepUntil({ keep: { years }, from: "record date" }, start);
    expect(last.year * 10_000 + last.month * 100 + last.day).toBeGreaterThanOrEqual(
      (start.year + years) * 10_000 + start.month * 100 + start.day,
    );
    expect(compareDates(last, start)).toBeGreaterThanOrEqual(years * 365);
  });
});
