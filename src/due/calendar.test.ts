/** Calendar sums and zones, held against a second implementation of the calendar (Temporal). */
import { fc, test as property } from "@fast-check/vitest";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import {
  addDays,
  addMonths,
  addWorkingDays,
  addYears,
  compareDates,
  date,
  dayNumber,
  fromDayNumber,
  parseDate,
  showDate,
} from "./calendar";
import { dueAfter } from "./duration";
import { dateAt, instantOf, isZone, offsetMsAt, parseInstant, showWall, startOfDay, wallAt } from "./zone";

const anyDate = fc
  .integer({ min: dayNumber(date("1900-01-01")), max: dayNumber(date("2199-12-31")) })
  .map(fromDayNumber);
const anyZone = fc.constantFrom(
  "UTC",
  "Europe/Berlin",
  "Europe/London",
  "America/New_York",
  "America/Los_Angeles",
  "Australia/Lord_Howe",
  "Pacific/Apia",
  "Asia/Kathmandu",
  "Africa/Casablanca",
  "America/Sao_Paulo",
);
const anyInstant = fc.integer({ min: Date.UTC(1971, 0, 1), max: Date.UTC(2090, 0, 1) });
const plain = (d: { year: number; month: number; day: number }) => new Temporal.PlainDate(d.year, d.month, d.day);

describe("dates", () => {
  it.each(["2026-02-29", "2026-13-01", "2026-00-10", "2026-11-31", "26-11-25", "2026-11-25T00:00", "1899-12-31", ""])(
    "refuses %j",
    (text) => expect(parseDate(text)).toMatchObject({ ok: false, code: "bad-date" }),
  );

  property.prop([anyDate, fc.integer({ min: 0, max: 600 })])(
    "adds months as Temporal does where the day exists or is cut to month end",
    (from, months) => {
      expect(showDate(addMonths(from, months, "monthEnd"))).toBe(plain(from).add({ months }).toString());
    },
  );

  property.prop([anyDate, fc.integer({ min: 0, max: 50 })])(
    "keeping longer is never earlier, and later by at most a day",
    (from, years) => {
      const apart = compareDates(addYears(from, years, "keepLonger"), addYears(from, years, "monthEnd"));
      expect([0, 1]).toContain(apart);
    },
  );

  property.prop([anyDate, fc.integer({ min: -40_000, max: 40_000 })])("adds days as Temporal does", (from, days) => {
    expect(showDate(addDays(from, days))).toBe(plain(from).add({ days }).toString());
  });

  it("counts five working days over a weekend and over a holiday", () => {
    expect(showDate(addWorkingDays(date("2026-11-25"), 5))).toBe("2026-12-02"); // a Wednesday
    expect(showDate(addWorkingDays(date("2026-11-25"), 5, [date("2026-11-26")]))).toBe("2026-12-03");
  });

  property.prop([anyDate, fc.integer({ min: 1, max: 30 })])(
    "ends working days on a weekday, with exactly that many between",
    (from, count) => {
      const end = addWorkingDays(from, count);
      const span = Array.from({ length: dayNumber(end) - dayNumber(from) }, (_, i) => plain(addDays(from, i + 1)));
      expect(span.filter((day) => day.dayOfWeek <= 5)).toHaveLength(count);
      expect(plain(end).dayOfWeek).toBeLessThanOrEqual(5);
    },
  );
});

describe("zones", () => {
  property.prop([anyInstant, anyZone])("reads the wall as Temporal does", (ms, zone) => {
    const wall = wallAt(ms, zone);
    const theirs = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone);
    expect([wall.year, wall.month, wall.day, wall.hour, wall.minute, wall.second]).toEqual([
      theirs.year,
      theirs.month,
      theirs.day,
      theirs.hour,
      theirs.minute,
      theirs.second,
    ]);
    expect(offsetMsAt(ms, zone)).toBe(theirs.offsetNanoseconds / 1e6);
  });

  property.prop([anyInstant, anyZone, fc.integer({ min: 1, max: 400 })])(
    "lands where Temporal lands after a number of days, whatever the clocks do",
    (ms, zone, days) => {
      const theirs = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone).add({ days });
      expect(dueAfter(ms, { days }, zone)).toBe(theirs.epochMilliseconds);
    },
  );

  property.prop([anyDate, fc.integer({ min: 0, max: 1439 }), anyZone])(
    "finds the instant of a wall time as Temporal does, skipped and doubled hours too",
    (day, minutes, zone) => {
      fc.pre(day.year >= 1972);
      const wall = { ...day, hour: Math.floor(minutes / 60), minute: minutes % 60, second: 0 };
      const theirs = Temporal.PlainDateTime.from(wall).toZonedDateTime(zone, { disambiguation: "compatible" });
      expect(instantOf(wall, zone)).toBe(theirs.epochMilliseconds);
    },
  );

  it("takes a skipped hour forward and a doubled hour at its first coming", () => {
    const skipped = instantOf({ ...date("2027-03-28"), hour: 2, minute: 30, second: 0 }, "Europe/Berlin");
    const doubled = instantOf({ ...date("2026-10-25"), hour: 2, minute: 30, second: 0 }, "Europe/Berlin");
    expect(new Date(skipped).toISOString()).toBe("2027-03-28T01:30:00.000Z");
    expect(new Date(doubled).toISOString()).toBe("2026-10-25T00:30:00.000Z");
  });

  it("starts the day after the jump where midnight is skipped (Sao Paulo, 4 November 2018)", () => {
    expect(new Date(startOfDay(date("2018-11-04"), "America/Sao_Paulo")).toISOString()).toBe(
      "2018-11-04T03:00:00.000Z",
    );
  });

  it("reads RFC 3339 and wall times", () => {
    const at = Date.parse("2026-11-25T06:40:00Z");
    const texts = ["2026-11-25T06:40:00Z", "2026-11-25T07:40:00+01:00", "2026-11-25T07:40", "2026-11-25 07:40:00"];
    expect(texts.map((text) => parseInstant(text, "Europe/Berlin"))).toEqual(
      texts.map(() => ({ ok: true, value: at })),
    );
    expect(showWall(at, "Europe/Berlin")).toBe("2026-11-25 07:40");
    expect(showDate(dateAt(at, "America/Los_Angeles"))).toBe("2026-11-24");
  });

  it.each(["2026-11-25", "2026-11-25T24:00", "2026-02-30T10:00", "2026-11-25T10:00+25:00", "now"])(
    "refuses the time %j",
    (text) => {
      expect(parseInstant(text, "UTC")).toMatchObject({ ok: false, code: "bad-time" });
    },
  );

  it.each(["", "Mars/Olympus", "+01:00", "Europe/Berlin\n", "../etc"])("does not take %j for a zone", (zone) => {
    expect(isZone(zone)).toBe(false);
  });
});
