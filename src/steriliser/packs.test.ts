/** A sterile pack: how long it is good, what ends it, and its label. */
import { describe, expect, it, test } from "vitest";
import { date } from "../due/calendar";
import { Pack, packLabel, packState } from "./packs";

const today = date("2026-11-25");

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
