/** The record of a cycle from CSV: units in the names, gauge and absolute kept apart, every trouble in one line. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { splitRows } from "../sums/csvRows";
import { parseCycleCsv } from "./csv";

function read(text: string, atmosphereKPa?: number) {
  const record = parseCycleCsv(text, atmosphereKPa);
  if (!record.ok) throw new Error(record.words);
  return record.value;
}

describe("a cycle in CSV", () => {
  it("is read in seconds and Celsius, with pressure where there is one", () => {
    expect(read("time_s,temperature_c,pressure_kpa_abs\n0,20.5,101.3\n60,134,304.2\n").readings).toEqual([
      { tMs: 0, celsius: 20.5, kPaAbs: 101.3 },
      { tMs: 60_000, celsius: 134, kPaAbs: 304.2 },
    ]);
  });

  it("is read in minutes and Fahrenheit: 270 °F is 132.2222 °C", () => {
    const [, second] = read("Time (min);Temperature [°F]\r\n0;68\r\n1,5;270\r\n").readings;
    expect(second?.tMs).toBe(90_000);
    expect(second?.celsius.toFixed(4)).toBe("132.2222");
  });

  it("turns gauge into absolute: 1.0371 bar gauge and 15.04 psi gauge are 205 kPa", () => {
    const [bar] = read("time_s,temperature_c,pressure_bar_gauge\n0,121,1.0371\n").readings;
    const [psi] = read("time_s,temperature_c,pressure_psi_gauge\n0,121,15.04\n").readings;
    expect([bar?.kPaAbs?.toFixed(1), psi?.kPaAbs?.toFixed(1)]).toEqual(["205.0", "205.0"]);
  });

  it("uses the local air pressure for gauge columns", () => {
    expect(read("time_s,temperature_c,pressure_kpa_gauge\n0,121,100\n", 84).readings[0]?.kPaAbs).toBe(184);
  });

  it("ignores what it does not understand and names it", () => {
    expect(read("step,time_s,temperature_c\nheat,0,20\n").ignoredColumns).toEqual(["step"]);
  });

  it("reads quoted fields, a byte-order mark and blank lines", () => {
    expect(read('\uFEFF"time_s","temperature_c"\n\n"0","20"\n\n').readings).toHaveLength(1);
  });

  it.each([
    ["", "empty"],
    ["time_s,temperature_c\n", "empty"],
    ["temperature_c\n20\n", "no-time-column"],
    ["time_s\n20\n", "no-temperature-column"],
    ["time_s,temperature_c,pressure_bar\n0,20,1\n", "pressure-kind-unknown"],
    ["time_s,temperature_c,temperature_f\n0,20,68\n", "two-columns-for-one"],
    ["time_s,temperature_c\n0,hot\n", "bad-value"],
    ["time_s,temperature_c\n0,1e2\n", "bad-value"],
    ["time_s,temperature_c\n0,900\n", "bad-value"],
    ["time_s,temperature_c\n0\n", "bad-value"],
    ["time_s,temperature_c\n-1,20\n", "bad-value"],
    ["time_s,temperature_c\n0,20\n0,21\n", "time-not-increasing"],
    ['time_s,temperature_c\n"0,20\n', "malformed"],
    [`time_s,temperature_c\n${"0,20\n".repeat(1_000_001)}`, "too-large"],
  ])("is refused with a code (%#)", (text, code) => {
    expect(parseCycleCsv(text)).toMatchObject({ ok: false, code });
  });

  it("names the line of a bad value", () => {
    expect(parseCycleCsv("time_s,temperature_c\n0,20\n60,x\n")).toMatchObject({
      words: expect.stringContaining("Line 3"),
    });
  });

  property.prop([fc.string({ unit: "binary", maxLength: 300 })])("never throws on any text", (text) => {
    expect(typeof parseCycleCsv(text).ok).toBe("boolean");
    expect(typeof parseCycleCsv(`time_s,temperature_c\n${text}`).ok).toBe("boolean");
  });

  const cells = fc.array(
    fc.array(
      fc.string({ minLength: 1, maxLength: 8 }).filter((c) => c.trim() !== ""),
      { minLength: 2, maxLength: 4 },
    ),
    { minLength: 1, maxLength: 6 },
  );
  property.prop([cells])("splits quoted rows back into the cells they were (RFC 4180)", (table) => {
    const text = table.map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(",")).join("\r\n");
    fc.pre(!/[;\t]/.test(text));
    expect(splitRows(text)?.rows).toEqual(table);
  });
});
