/** GS1 codes as published, worked by hand, and mistaken. GS stands for the separator, 0x1D. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { checkDigitOf, hasRightCheckDigit, weightedSum } from "./checkDigit";
import { splitElements } from "./elementStrings";
import { readGs1Date, yearOf } from "./gs1Date";
import { readPackCode } from "./packCode";

const GS = "\u001d";
const dataMatrix = (text: string) => readPackCode({ symbology: "]d2", text }, 2026);
const packIn = (text: string) => {
  const read = dataMatrix(text);
  if (!read.ok) throw new Error(read.code);
  return read.pack;
};

describe("check digit (GS1 General Specifications 7.9)", () => {
  test.each([
    ["5901234123457", 83, 7],
    ["4006381333931", 89, 1],
    ["9521234543213", 77, 3],
    ["09521234543213", 77, 3],
    ["10614141123459", 81, 9],
    ["12345678901231", 109, 1],
    // The sample of the FDA's UDI rules.
    ["51022222233336", 64, 6],
    ["036000291452", 58, 2],
    ["96385074", 86, 4],
    ["106141412345678908", 132, 8],
    ["095287654321012346", 124, 6],
    // The worked example on GS1's own page: 629104150021, sum 57, check 3.
    ["6291041500213", 57, 3],
  ])("of %s: weighted sum %i, check %i", (number, sum, check) => {
    expect(weightedSum(number.slice(0, -1))).toBe(sum);
    expect(checkDigitOf(number.slice(0, -1))).toBe(check);
    expect(hasRightCheckDigit(number)).toBe(true);
  });

  property.prop([fc.stringMatching(/^\d{12}$/), fc.nat(6)])("does not change with zeros in front", (digits, zeros) => {
    expect(checkDigitOf("0".repeat(zeros) + digits)).toBe(checkDigitOf(digits));
  });

  test("misses two neighbours exchanged that differ by five, as the rule does", () => {
    expect(checkDigitOf("952123450521")).toBe(1);
    expect(checkDigitOf("952123455021")).toBe(1);
  });

  property.prop([fc.stringMatching(/^\d{13}$/), fc.nat(12), fc.integer({ min: 1, max: 9 })])(
    "catches every single wrong digit",
    (digits, at, more) => {
      const number = `${digits}${checkDigitOf(digits)}`;
      const wrong = (Number(number[at]) + more) % 10;
      expect(hasRightCheckDigit(`${number.slice(0, at)}${wrong}${number.slice(at + 1)}`)).toBe(false);
    },
  );
});

describe("dates", () => {
  // Century: the arithmetic of GS1's own reference linter (lint_yymmd0.c), with the real year for its constant.
  test.each([
    [2026, 0, 2000],
    [2026, 25, 2025],
    [2026, 26, 2026],
    [2026, 75, 2075],
    [2026, 76, 2076],
    [2026, 77, 1977],
    [2026, 99, 1999],
    [2030, 80, 2080],
    [2030, 81, 1981],
    [2050, 0, 2100],
    [2050, 1, 2001],
    [2050, 99, 2099],
    [2060, 10, 2110],
    [2060, 11, 2011],
    [1999, 49, 2049],
    [1999, 50, 1950],
  ])("in %i the digits %i mean %i", (now, digits, year) => {
    expect(yearOf(digits, now)).toBe(year);
  });

  // Day 00: last day of the month for an expiry.
  test.each([
    ["260200", "2026-02-28"],
    ["280200", "2028-02-29"],
    ["260400", "2026-04-30"],
    ["261200", "2026-12-31"],
  ])("%s is the end of its month, %s, and says so", (text, day) => {
    expect(readGs1Date(text, 2026)).toEqual({ ok: true, day, isMonthOnly: true });
  });

  // The unit tests of the reference linter, which holds the year at 2021.
  test.each(["000606", "250606", "990606", "200229", "240229", "200600"])("the reference linter passes %s", (text) => {
    expect(readGs1Date(text, 2021).ok).toBe(true);
  });
  test.each(["201310", "200132", "210229", "200431", "11111", "1111111", "2x0131"])(
    "the reference linter fails %s",
    (text) => {
      expect(readGs1Date(text, 2021).ok).toBe(false);
    },
  );
});

describe("element strings", () => {
  test("lot, separator, expiry: the string of GS1's own documentation", () => {
    const text = `010952123454321310ABC123${GS}17251231`;
    expect(text.length).toBe(33);
    expect(packIn(text)).toMatchObject({ gtin: "09521234543213", lot: "ABC123", expiry: "2025-12-31", warnings: [] });
  });

  test("expiry before lot needs no separator", () => {
    const text = "01095212345432131725123110ABC123";
    expect(text.length).toBe(32);
    expect(packIn(text)).toMatchObject({ lot: "ABC123", expiry: "2025-12-31", warnings: [] });
  });

  test("day 00 in February of a leap year is the 29th, with a warning that only the month was stated", () => {
    const text = "01095212345432131728020010LOT7A";
    expect(text.length).toBe(31);
    expect(packIn(text)).toMatchObject({ lot: "LOT7A", expiry: "2028-02-29", warnings: ["month-only"] });
  });

  test("the FDA's sample of a unique device identifier: making, expiry, lot and serial", () => {
    const text = `0151022222233336111412311715070710A213B1${GS}211234`;
    expect(text.length).toBe(47);
    expect(packIn(text)).toEqual({
      gtin: "51022222233336",
      produced: "2014-12-31",
      expiry: "2015-07-07",
      lot: "A213B1",
      serial: "1234",
      warnings: [],
    });
  });

  test("the trap: without its separator the lot swallows the expiry, and that is warned of", () => {
    const text = "010952123454321310ABC12317251231";
    expect(text.length).toBe(32);
    expect(packIn(text)).toMatchObject({
      lot: "ABC12317251231",
      expiry: null,
      warnings: ["separator-may-be-missing"],
    });
  });

  test("a separator after a value of fixed length is tolerated", () => {
    const text = `0109521234543213${GS}1725123110A1${GS}21S9`;
    expect(text.length).toBe(34);
    expect(packIn(text)).toMatchObject({ expiry: "2025-12-31", lot: "A1", serial: "S9", warnings: [] });
  });

  test("a making with day 00 has no day", () => {
    expect(packIn("01095212345432131126020010A1")).toMatchObject({ produced: null, lot: "A1" });
  });

  test("a lot alone is refused: it counts only with its product number", () => {
    expect(dataMatrix("10ABC123")).toMatchObject({ ok: false, code: "no-product-number" });
  });

  test.each([
    ["a wrong check digit", "010952123454321410A1", "bad-check-digit"],
    ["a thirteenth month", "01095212345432131726130110A1", "bad-date"],
    ["30 February", "01095212345432131726023010A1", "bad-date"],
    ["an end within the number", "0109521234", "malformed"],
    ["a lot of 21 letters", `010952123454321310${"A".repeat(21)}`, "malformed"],
    ["an unknown identifier", "0109521234543213890AB", "malformed"],
    ["letters in the number", "010952123454321X10A1", "malformed"],
    ["two different lots", `010952123454321310A1${GS}10B2`, "malformed"],
    ["nothing", "", "malformed"],
    ["a lot with a line break in it", "010952123454321310A\nB", "malformed"],
    ["200,000 letters", `010952123454321310${"A".repeat(200_000)}`, "malformed"],
  ])("refuses %s", (_, text, code) => {
    expect(dataMatrix(text)).toMatchObject({ ok: false, code });
  });
});

describe("symbologies", () => {
  test.each(["]d2", "]C1", "]Q3", "]e0"])("%s carries elements", (symbology) => {
    const read = readPackCode({ symbology, text: "01095212345432131728013110N-204" }, 2026);
    expect(read).toMatchObject({ ok: true, pack: { lot: "N-204", expiry: "2028-01-31" } });
  });

  test("an EAN-13 names the product, and no lot", () => {
    expect(readPackCode({ symbology: "]E0", text: "9521234543213" }, 2026)).toEqual({
      ok: true,
      pack: { gtin: "09521234543213", lot: null, expiry: null, produced: null, serial: null, warnings: [] },
    });
    expect(readPackCode({ symbology: "]E0", text: "9521234543214" }, 2026)).toMatchObject({ code: "bad-check-digit" });
  });

  test("a plain QR code is read where it is an address with GS1 elements in it, and never opened", () => {
    const text = "https://example.com/01/09521234543213/10/ABC123?17=280131";
    expect(readPackCode({ symbology: "]Q1", text }, 2026)).toMatchObject({
      pack: { gtin: "09521234543213", lot: "ABC123", expiry: "2028-01-31" },
    });
  });

  test.each(["https://example.com/menu", "hello", "javascript:alert(1)", "https://example.com/01/abc"])(
    "a plain QR code that says %s is no pack",
    (text) => {
      expect(readPackCode({ symbology: "]Q1", text }, 2026)).toMatchObject({ ok: false, code: "not-a-pack" });
    },
  );
});

const lots = fc.stringMatching(/^[A-Z0-9\-/.]{1,20}$/);
property.prop([lots, fc.integer({ min: 0, max: 99 }), fc.integer({ min: 1, max: 12 }), fc.boolean()])(
  "what is written with its separators is read back the same, in either order",
  (lot, yy, month, lotFirst) => {
    const two = (value: number) => String(value).padStart(2, "0");
    const date = `17${two(yy)}${two(month)}15`;
    const body = lotFirst ? `10${lot}${GS}${date}` : `${date}10${lot}`;
    const pack = packIn(`0109521234543213${body}`);
    expect(pack.lot).toBe(lot);
    expect(pack.expiry).toBe(`${yearOf(yy, 2026)}-${two(month)}-15`);
  },
);

property.prop([fc.string({ unit: "binary", maxLength: 200 }), fc.constantFrom("]d2", "]C1", "]E0", "]Q1", "", "]")])(
  "no text whatever makes it throw",
  (text, symbology) => {
    expect(() => readPackCode({ symbology, text }, 2026)).not.toThrow();
    expect(() => splitElements(text)).not.toThrow();
  },
);
