/** The due-times screen. */
import { describe, expect, it } from "vitest";
import { placeById } from "../places/profiles";
import { date } from "./calendar";
import { ageView, exposureRows, retentionRows } from "./view";

function place(id: string) {
  const found = placeById(id);
  if (!found.ok) throw new Error(found.words);
  return found.value;
}

const on = date("2026-11-25");

describe("the due-times screen", () => {
  it("asks the chosen place for its age", () => {
    expect(ageView({ born: "2008-11-25", on, place: place("great-britain") })).toMatchObject({
      value: { allowed: true },
    });
    expect(ageView({ born: "2008-11-26", on, place: place("great-britain") })).toMatchObject({
      value: { allowed: false },
    });
    expect(ageView({ born: "2008-11-25", on, place: place("european-union") })).toMatchObject({
      ok: false,
      code: "age-not-known-here",
    });
    expect(ageView({ born: "yesterday", on, place: place("texas") })).toMatchObject({ ok: false, code: "bad-date" });
  });

  it("shows each follow-up with its standing", () => {
    const at = Date.parse("2026-11-25T06:40:00Z");
    const rows = exposureRows(at, "UTC", at + 2 * 3_600_000);
    expect(rows[0]).toMatchObject({ id: "clinician", standing: "passed" });
    expect(rows.find((row) => row.id === "hiv-pep-latest")?.standing).toBe("open");
    expect(rows.find((row) => row.id === "hcv-nat")?.standing).toBe("not yet open");
  });

  it("lists retention by the place's table and keeps what the table is silent on", () => {
    const records = [
      { id: "r1", kind: "client-record", startsOn: date("2020-01-01") },
      { id: "r2", kind: "biological-test-log", startsOn: date("2023-01-01") },
    ] as const;
    expect(retentionRows(records, place("california"), on)).toEqual([
      {
        recordId: "r2",
        kind: "biological test log",
        until: "2026-01-01",
        state: "may be deleted",
        says: "may be deleted",
      },
      {
        recordId: "r1",
        kind: "client record",
        until: "not known here",
        state: "keep: no rule known",
        says: "keep: no rule known",
      },
    ]);
  });
});
