/** Amounts as people write them, and those that must not be guessed. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { mixView } from "../../../mixing/view";
import { forgive } from "./forgive";

const read = (text: string) => {
  const read = forgive(text);
  return read.ok ? read.value : read.code;
};

describe("forgive", () => {
  it.each([
    ["0,5 %", "0.5 %"],
    ["0.125 %", "0.125 %"],
    ["5percent", "5 %"],
    ["5 per cent", "5 %"],
    ["50 000 ppm", "50000 ppm"],
    ["50\u202f000 ppm", "50000 ppm"],
    ["50'000 ppm", "50000 ppm"],
    ["1 Litre", "1 L"],
    ["1l", "1 L"],
    ["1,5 liters", "1.5 L"],
    ["500 ml.", "500 mL"],
    ["12° chlorum", "12 deg chlorum"],
    ["96 Vol%", "96 % v/v"],
    ["2 gal", "2 gallon"],
    ["1/2 cup", "1/2 cup"],
    ["10 parts per million", "10 ppm"],
    ["1.5 grams", "1.5 g"],
    ["5 furlongs", "5 furlongs"],
    ["", ""],
    ["about five", "about five"],
  ])("reads %j as %j", (typed, meant) => expect(read(typed)).toBe(meant));

  it.each(["1,000 ppm", "1.000 ppm", "50,000 ppm", "50.000"])("asks what %j is", (typed) =>
    expect(read(typed)).toBe("thousand-or-one"),
  );

  property.prop([fc.integer({ min: 1, max: 99_999 }), fc.constantFrom(" ppm", "ppm", " parts per million", " PPM")])(
    "changes nothing about a plain number, however its unit is spelled",
    (amount, unit) => {
      const target = read(`${amount}${unit}`);
      expect(target).toBe(`${amount} ${unit.trim() === "PPM" ? "PPM" : "ppm"}`);
      const form = {
        kind: "liquid",
        stock: "10 %",
        volume: "1 L",
        companions: [],
        productName: "A",
        madeBy: "B",
      } as const;
      expect(mixView({ ...form, target, madeAtMs: 0, labelHours: "", zone: "UTC" }).ok).toBe(true);
    },
  );

  property.prop([fc.string({ maxLength: 60 })])("answers whatever is typed", (typed) => {
    expect(typeof read(typed)).toBe("string");
  });
});
