/** When a test of the steriliser is due, by rule set, and what goes in with every load. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { addMonths, compareDates, date, dayNumber, fromDayNumber, showDate } from "../due/calendar";
import { biologicalDue, bowieDickDue, indicatorsForLoad, monthly, weekly } from "./indicators";

const today = date("2026-11-25");

describe("the next biological test", () => {
  const due = (last: string | null, rule = weekly, events: Parameters<typeof biologicalDue>[1] = []) => {
    const found = biologicalDue(last === null ? null : date(last), events, rule, today);
    return [showDate(found.dueOn), found.because, found.state];
  };

  it("is weekly by CDC 2008 and monthly by California HSC 119315(b)(2), either published frequency", () => {
    expect(due("2026-11-18")).toEqual(["2026-11-25", "interval", "due today"]);
    expect(due("2026-11-18", monthly)).toEqual(["2026-12-18", "interval", "later"]);
  });

  it("is overdue the day after", () => {
    expect(due("2026-11-17")).toEqual(["2026-11-24", "interval", "overdue"]);
  });

  it("comes on the last day of a shorter month", () => {
    expect(due("2027-01-31", monthly)).toEqual(["2027-02-28", "interval", "later"]);
  });

  it("comes at once after installation or a major repair where the rule says so, and not where it does not", () => {
    const repair = [{ kind: "major repair", on: date("2026-11-20") }] as const;
    expect(due("2026-11-18", monthly, repair)).toEqual(["2026-11-20", "major repair", "overdue"]);
    expect(due("2026-11-18", weekly, repair)).toEqual(["2026-11-25", "interval", "due today"]);
    expect(due("2026-11-20", monthly, repair)).toEqual(["2026-12-20", "interval", "later"]);
  });

  it("is due at once where none was ever done", () => {
    expect(due(null)).toEqual(["2026-11-25", "never tested", "due today"]);
  });

  const anyDay = fc
    .integer({ min: dayNumber(date("2020-01-01")), max: dayNumber(date("2060-12-31")) })
    .map(fromDayNumber);
  property.prop([anyDay])("is never earlier than the rule: 7 days, or the next month's same or last day", (last) => {
    expect(compareDates(biologicalDue(last, [], weekly, today).dueOn, last)).toBe(7);
    const byMonth = biologicalDue(last, [], monthly, today).dueOn;
    expect(compareDates(byMonth, last)).toBeGreaterThanOrEqual(28);
    expect(byMonth).toEqual(addMonths(last, 1, "monthEnd"));
  });
});

describe("the other indicators", () => {
  it("run a Bowie-Dick test each day before the first load, vacuum sterilisers only", () => {
    expect(bowieDickDue(false, null, today)).toBeNull();
    expect(bowieDickDue(true, null, today)).toMatchObject({ dueOn: today, state: "due today" });
    expect(bowieDickDue(true, today, today)).toMatchObject({ dueOn: date("2026-11-26"), state: "later" });
    expect(bowieDickDue(true, date("2026-11-24"), today)).toMatchObject({ state: "due today" });
  });

  it("go with every load: inside and outside the pack, outside only if inside cannot be seen (CDC 2008)", () => {
    const base = { implants: false, innerVisible: false, place: "other", cycleClass: "B" } as const;
    expect(indicatorsForLoad(base)).toHaveLength(3);
    expect(indicatorsForLoad({ ...base, innerVisible: true })).toHaveLength(2);
    expect(indicatorsForLoad({ ...base, implants: true }).map((i) => i.what)).toContain(
      "biological indicator, with a control of the same lot",
    );
    expect(indicatorsForLoad({ ...base, place: "california" }).map((i) => i.what)).toContain("Class V integrator");
  });
});
