/** The steriliser screen: one form, one verdict on cycle and load together, and the tests due at the chosen place. */
import { describe, expect, it } from "vitest";
import { date } from "../due/calendar";
import { placeById } from "../places/profiles";
import { type CycleForm, cycleView, type HandForm, handView, testRows } from "./view";

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

describe("what was read off the display", () => {
  const read: HandForm = { ...form, entry: { coolestC: 134.5, hottestC: 136, heldMs: 210_000, kPaAbs: null } };

  it("is judged by its coolest reading and says that it was read by hand; there is nothing to draw", () => {
    expect(handView(read)).toMatchObject({
      value: { accepted: true, plot: null, words: expect.stringMatching(/^Held .* As read by hand\.$/) },
    });
    expect(handView({ ...read, entry: { ...read.entry, coolestC: 133.9 } })).toMatchObject({
      value: { accepted: false },
    });
  });

  it("is not accepted with a load that the class may not carry, and asks for a load", () => {
    expect(handView({ ...read, cycleClass: "N" })).toMatchObject({ value: { accepted: false } });
    expect(handView({ ...read, load: [] })).toMatchObject({ ok: false, code: "empty-load" });
  });
});

describe("a gauge pressure", () => {
  it("is read against the local air pressure: high up, the same gauge means cooler steam", () => {
    const csv = "time_min,temperature_c,pressure_bar_gauge\n0,135,2.05\n1,135,2.05\n2,135,2.05\n3,135,2.05\n";
    expect(cycleView({ ...form, csv })).toMatchObject({ value: { accepted: true, verdict: { code: "held" } } });
    // 80 kPa is the standard atmosphere at about 1950 m (ISO 2533).
    const high = cycleView({ ...form, csv, atmosphereKPa: 80 });
    expect(high).toMatchObject({ value: { accepted: false, verdict: { code: "held-in-superheat" } } });
  });
});
