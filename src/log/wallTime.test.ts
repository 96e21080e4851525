import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { readWallTime, WallTime, wallTime } from "./wallTime";

describe("RFC 3339 section 5.8", () => {
  test.each([
    ["1985-04-12T23:20:50.52Z", 482196050520, 0, false],
    ["1996-12-19T16:39:57-08:00", 851042397000, -480, false],
    ["1996-12-20T00:39:57Z", 851042397000, 0, false],
    ["1990-12-31T23:59:60Z", 662688000000, 0, true],
    ["1990-12-31T15:59:60-08:00", 662688000000, -480, true],
    ["1937-01-01T12:00:27.87+00:20", -1041337172130, 20, false],
  ])("reads %s", (text, epochMs, offsetMin, leap) => {
    expect(readWallTime(text)).toEqual({ epochMs, offsetMin, leap });
  });
});

test.each([
  ["2026-11-25 06:40:00Z", "a space for the T"],
  ["2026-11-25T24:00:00Z", "hour 24"],
  ["2026-11-25T06:60:00Z", "minute 60"],
  ["2026-11-25T06:40:61Z", "second 61"],
  ["2026-11-25T06:40:60Z", "a leap second in the middle of a day"],
  ["2026-11-25T23:59:60Z", "a leap second in the middle of a month"],
  ["2026-02-29T06:40:00Z", "a day that the year has not"],
  ["2026-04-31T06:40:00Z", "a day that the month has not"],
  ["2026-13-01T06:40:00Z", "month 13"],
  ["2026-11-00T06:40:00Z", "day 0"],
  ["2026-11-25T06:40:00", "no offset"],
  ["2026-11-25T06:40:00+1:00", "an offset of one digit"],
  ["2026-11-25T06:40:00+24:00", "an offset of 24 hours"],
  ["2026-11-25T06:40:00.Z", "a point without a fraction"],
  ["2026-11-25T06:40Z", "no seconds"],
  ["2026-11-25T06:40:00Z ", "a space behind"],
  ["26-11-25T06:40:00Z", "a year of two digits"],
])("refuses %s: %s", (text) => {
  expect(readWallTime(text)).toBeNull();
});

test("takes the leap day of a leap year, and of the year 2000, and not of 1900", () => {
  expect(["2028", "2000", "1900"].map((year) => readWallTime(`${year}-02-29T00:00:00Z`) !== null)).toEqual([
    true,
    true,
    false,
  ]);
});

test("takes lower-case t and z, as section 5.6 lets it", () => {
  expect(readWallTime("1985-04-12t23:20:50.52z")?.epochMs).toBe(482196050520);
});

test("writes local time with its offset", () => {
  expect(wallTime(482196050520, 90)).toBe("1985-04-13T00:50:50.520+01:30");
  expect(wallTime(482196050520, -210)).toBe("1985-04-12T19:50:50.520-03:30");
  expect(wallTime(482196050520, 0)).toBe("1985-04-12T23:20:50.520+00:00");
});

test.each([["1985-04-12T23:20:50.520Z"], ["1985-04-12T23:20:50+00:00"], ["1985-02-30T23:20:50.520+00:00"]])(
  "does not take %s for the log's one form",
  (text) => {
    expect(WallTime.safeParse(text).success).toBe(false);
  },
);

const centuries = fc.integer({ min: Date.UTC(1970, 0, 1), max: Date.UTC(2199, 11, 31) });

property.prop([centuries, fc.integer({ min: -1439, max: 1439 })])(
  "reads back what it wrote, to the millisecond",
  (epochMs, offsetMin) => {
    const text = wallTime(epochMs, offsetMin);
    expect(readWallTime(text)).toEqual({ epochMs, offsetMin, leap: false });
    expect(WallTime.safeParse(text).success).toBe(true);
    expect(Date.parse(text)).toBe(epochMs);
  },
);
