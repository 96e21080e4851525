/** The steriliser screen: one form, one verdict on cycle and load together, and the tests due at the chosen place. */
import { describe, expect, it } from "vitest";
import { date } from "../due/calendar";
import { placeById } from "../places/profiles";
import { type CycleForm, cycleView, testRows } from "./view";

const held = "time_min,temperature_c\n0,134\n1,135\n2,135\n3,134\n";
const form: CycleForm = {
  csv: held,
  bandId: "en-134",
  cycleClass: "B",
  load: ["wrapped-solid"],
  statedByMaker: [],
  choice: {},
};

function place(id: string) {
  const found = placeById(id);
  if (!found.ok) throw new Error(found.words);
  return found.value;
}

describe("the cycle form", () => {
  it("accepts a held cycle with a load its class may carry, and draws it", () => {
    expect(cycleView(form)).toMatchObject({
      value: { accepted: true, loadRefused: null, plot: { hold: { x: 0, width: 640 } } },
    });
  });

  it("does not accept a held cycle of class N with a wrapped pack", () => {
    expect(cycleView({ ...form, cycleClass: "N" })).toMatchObject({
      value: { accepted: false, words: expect.stringMatching(/^NOT accepted: wrapped solid/) },
    });
  });

  it("asks for what is missing", () => {
    expect(cycleView({ ...form, bandId: "" })).toMatchObject({ ok: false, code: "unknown-band" });
    expect(cycleView({ ...form, load: [] })).toMatchObject({ ok: false, code: "empty-load" });
    expect(cycleView({ ...form, csv: "" })).toMatchObject({ ok: false, code: "empty" });
  });
});

describe("the tests due", () => {
  const facts = { lastBiological: date("2026-11-01"), lastBowieDick: null, hasVacuum: true, events: [] };
  const today = date("2026-11-25");

  it("follow the chosen place: overdue weekly, not yet monthly", () => {
    expect(testRows(place("texas"), facts, today)).toEqual([
      { what: "biological test", due: "2026-11-08", state: "overdue", because: "interval" },
      { what: "Bowie-Dick test", due: "2026-11-25", state: "due today", because: "never tested" },
    ]);
    expect(testRows(place("california"), { ...facts, hasVacuum: false }, today)).toEqual([
      { what: "biological test", due: "2026-12-01", state: "later", because: "interval" },
    ]);
  });

  it("are weekly, and say so, where the place gives no frequency", () => {
    expect(testRows(place("great-britain"), facts, today)[0]).toMatchObject({
      what: expect.stringContaining("this place gives none"),
      due: "2026-11-08",
    });
  });
});
