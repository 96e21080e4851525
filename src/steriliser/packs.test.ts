/** Loads, tests due, packs, and the way from a failed test to the sessions that used its packs. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it, test } from "vitest";
import { addMonths, compareDates, date, dayNumber, fromDayNumber, showDate } from "../due/calendar";
import { biologicalDue, bowieDickDue, indicatorsForLoad, monthly, weekly } from "./indicators";
import { packsUsedIn, recallAfter, type SteriliserHistory, sessionsUsing } from "./links";
import { checkLoad, loadKinds } from "./load";
import { Pack, packLabel, packState } from "./packs";

const today = date("2026-11-25");

describe("class of cycle against load (EN 13060, from memory)", () => {
  it("lets class B take everything", () => {
    expect(checkLoad("B", loadKinds)).toMatchObject({ ok: true });
  });

  it.each(["wrapped-solid", "naked-hollow", "wrapped-hollow", "porous"] as const)(
    "refuses %s in a class N cycle",
    (kind) => {
      expect(checkLoad("N", ["naked-solid", kind])).toMatchObject({ ok: false, code: "load-not-for-class" });
    },
  );

  it("lets class S take only what its maker states", () => {
    expect(checkLoad("S", ["wrapped-solid"], ["wrapped-solid"])).toMatchObject({ ok: true });
    expect(checkLoad("S", ["wrapped-hollow"], ["wrapped-solid"])).toMatchObject({ ok: false });
    expect(checkLoad("N", ["wrapped-solid"], ["wrapped-solid"])).toMatchObject({ ok: false });
  });

  it("asks what was loaded", () => {
    expect(checkLoad("B", [])).toMatchObject({ code: "empty-load" });
  });
});

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

describe("a pack", () => {
  const pack = Pack.parse({
    id: "p1",
    cycleId: "c1",
    contents: "2 grips",
    wrapped: true,
    packedOn: "2026-08-31",
    initials: "AB",
    expiry: { rule: "event" },
    events: [],
  });
  const good = { cycleAccepted: true, cycleClass: "B", recalled: false } as const;

  test.each([
    [{}, {}, "sterile"],
    [{ events: [{ kind: "torn" as const, on: "2026-11-01" }] }, {}, "torn"],
    [{ events: [{ kind: "wet" as const, on: "2026-11-01" }] }, {}, "wet"],
    [{ events: [{ kind: "opened" as const, on: "2026-11-01" }] }, {}, "opened"],
    [{}, { cycleAccepted: false }, "cycle not accepted"],
    [{}, { cycleClass: "N" as const }, "wrapped in a class N cycle"],
    [{ wrapped: false }, { cycleClass: "N" as const }, "sterile"],
    [{}, { recalled: true }, "under recall"],
    [{ expiry: { rule: "months" as const, months: 2 } }, {}, "past its date"],
    [{ expiry: { rule: "months" as const, months: 3 } }, {}, "sterile"],
  ])("with %j and %j is %s", (changes, history, state) => {
    expect(packState({ ...pack, ...changes }, { ...good, ...history }, today)).toBe(state);
  });

  it("is good through the end of its date and not the day after", () => {
    const dated: Pack = { ...pack, expiry: { rule: "months", months: 3 } };
    expect([packState(dated, good, date("2026-11-30")), packState(dated, good, date("2026-12-01"))]).toEqual([
      "sterile",
      "past its date",
    ]);
  });

  it("carries date and initials on its label (California HSC 119315(a); 25 TAC 229.407(d))", () => {
    expect(packLabel(pack).printed).toEqual([
      "2 grips",
      "2026-08-31  AB",
      "Pack p1, cycle c1",
      "Sterile until wet, torn or opened",
    ]);
  });

  it("refuses a day that does not exist", () => {
    expect(Pack.safeParse({ ...pack, packedOn: "2026-02-30" }).success).toBe(false);
  });
});

describe("from a failed test to the sessions", () => {
  const history: SteriliserHistory = {
    cycles: ["c1", "c2", "c3", "c4", "c5"]
      .map((id, i) => ({ id, steriliserId: "s1", atMs: i }))
      .concat({ id: "x1", steriliserId: "s2", atMs: 2 }),
    tests: [
      { cycleId: "c1", result: "negative" },
      { cycleId: "c3", result: "positive" },
      { cycleId: "c5", result: "negative" },
    ],
    packs: ["c1", "c2", "c3", "c4", "c5", "x1"].map((cycleId) => ({ id: `p-${cycleId}`, cycleId })),
    uses: [
      { sessionId: "monday", packId: "p-c1" },
      { sessionId: "tuesday", packId: "p-c2" },
      { sessionId: "wednesday", packId: "p-c4" },
      { sessionId: "wednesday", packId: "p-c2" },
      { sessionId: "thursday", packId: "p-x1" },
      { sessionId: "friday", packId: "p-c5" },
    ],
  };

  it("lists every session since the last good test, up to the next, of that steriliser alone", () => {
    expect(recallAfter("c3", history)).toEqual({
      suspectCycleIds: ["c2", "c3", "c4"],
      usedPackIds: ["p-c2", "p-c4"],
      unusedPackIds: ["p-c3"],
      sessionIds: ["tuesday", "wednesday"],
      action: "test-again",
    });
  });

  it("calls back after a further positive (CDC 2008)", () => {
    const again = { ...history, tests: [...history.tests, { cycleId: "c4", result: "positive" as const }] };
    expect(recallAfter("c3", again).action).toBe("recall");
  });

  it("puts nothing in doubt for a cycle it does not know", () => {
    expect(recallAfter("c9", history)).toMatchObject({ suspectCycleIds: [], sessionIds: [] });
  });

  const anyUses = fc.array(
    fc.record({ sessionId: fc.constantFrom("a", "b", "c"), packId: fc.constantFrom("p", "q", "r") }),
  );
  property.prop([anyUses, fc.constantFrom("a", "b", "c"), fc.constantFrom("p", "q", "r")])(
    "a session used a pack exactly when the pack was used in the session",
    (uses, session, pack) => {
      expect(sessionsUsing(pack, uses).includes(session)).toBe(packsUsedIn(session, uses).includes(pack));
    },
  );

  const anyHistory = fc.record({
    results: fc.array(fc.constantFrom("negative", "positive", null), { minLength: 1, maxLength: 12 }),
    used: fc.array(fc.nat(11), { maxLength: 20 }),
    failed: fc.nat(11),
  });
  property.prop([anyHistory])(
    "no session between two good tests around the failure is left out, and none beyond is named",
    ({ results, used, failed }) => {
      const at = failed % results.length;
      const cycles = results.map((_, i) => ({ id: `c${i}`, steriliserId: "s", atMs: i }));
      const tests = results
        .flatMap((result, i) => (result === null || i === at ? [] : [{ cycleId: `c${i}`, result }]))
        .concat({ cycleId: `c${at}`, result: "positive" });
      const uses = used.map((i) => ({ sessionId: `session-${i}`, packId: `p${i}` }));
      const recall = recallAfter(`c${at}`, {
        cycles,
        tests,
        packs: cycles.map((c) => ({ id: c.id.replace("c", "p"), cycleId: c.id })),
        uses,
      });
      const inDoubt = (i: number) =>
        i < results.length &&
        !results
          .slice(Math.min(i, at), Math.max(i, at) + 1)
          .some((r, k) => r === "negative" && Math.min(i, at) + k !== at);
      expect([...recall.sessionIds].sort()).toEqual(
        [...new Set(used.filter(inDoubt).map((i) => `session-${i}`))].sort(),
      );
    },
  );
});
