/** Dates as printed on a box: century, day 00, and what is no date. */
import { describe, expect, it, test } from "vitest";
import { showDate } from "../due/calendar";
import { fullYear, parsePrintedExpiry } from "./printedExpiry";

describe("a date printed on a box", () => {
  const read = (text: string, year = 2026) => {
    const found = parsePrintedExpiry(text, year);
    return found.ok ? showDate(found.value.date) : found.code;
  };

  // Century rule of the GS1 syntax dictionary's date linter.
  test.each([
    [
      2026,
      [
        [0, 2000],
        [25, 2025],
        [26, 2026],
        [75, 2075],
        [76, 2076],
        [77, 1977],
        [99, 1999],
      ],
    ],
    [
      2030,
      [
        [80, 2080],
        [81, 1981],
      ],
    ],
    [
      2050,
      [
        [0, 2100],
        [1, 2001],
        [99, 2099],
      ],
    ],
    [
      2060,
      [
        [10, 2110],
        [11, 2011],
      ],
    ],
    [
      1999,
      [
        [49, 2049],
        [50, 1950],
      ],
    ],
  ])("in %d its two digits mean the right century", (current, pairs) => {
    expect(pairs.map(([digits]) => fullYear(digits ?? -1, current))).toEqual(pairs.map(([, year]) => year));
  });

  it("with day 00 ends with the month, and warns (GS1 GSCN 21-040)", () => {
    expect(["260200", "280200", "260400", "261200"].map((text) => read(text))).toEqual([
      "2026-02-28",
      "2028-02-29",
      "2026-04-30",
      "2026-12-31",
    ]);
    expect(parsePrintedExpiry("260200", 2026)).toMatchObject({ value: { warning: "day-not-printed" } });
    expect(parsePrintedExpiry("260228", 2026)).toMatchObject({ value: { warning: null } });
  });

  // Unit tests of the GS1 syntax dictionary's date linter, with its own current year 2021.
  it.each(["000606", "250606", "990606", "200229", "240229", "200600"])("%s is a date", (text) => {
    expect(parsePrintedExpiry(text, 2021).ok).toBe(true);
  });

  it.each(["201310", "200132", "210229", "200431", "11111", "1111111", "2x0131"])("%s is not", (text) => {
    expect(read(text, 2021)).toBe("bad-date");
  });
});
