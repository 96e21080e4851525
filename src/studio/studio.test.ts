/** What the studio's rows come to: the shelf after the records, the packs after the tests, what a session is offered. */
import { describe, expect, it } from "vitest";
import { date } from "../due/calendar";
import { mixedProduct } from "../mixing/mixedProduct";
import { strength } from "../mixing/units";
import { keptUntil } from "../mixing/useBy";
import { needle, spray, stockLine } from "../shelf/examples";
import { ratio } from "../sums/ratio";
import { countedSinceMs, leftOnShelf } from "./consumption";
import { cycle, hourMs, morningMs, needles, pack, sessionAt, zone } from "./examples";
import { type Change, onlyId } from "./kinds";
import { labelOffers, lotOffers, packOffers } from "./offers";
import { placeOf } from "./placeOf";
import { isAccepted, lastBiological, packStates, recalls, suspectCycles } from "./sterile";
import { nextNumber, readRows, type Studio } from "./studio";

const today = date("2026-11-25");

const studioOf = (rows: readonly Change[]): Studio => readRows(rows).studio;
const assigned: Change = {
  kind: "assigned",
  id: "cartridgeMachine",
  value: { items: { needle: "needle" }, gloves: null },
};
const needleRow: Change = { kind: "product", id: "needle", value: needle };

describe("what is left on the shelf", () => {
  const studio = studioOf([
    needleRow,
    assigned,
    { kind: "stock", id: "a", value: needles("a", "LOT-A", 10) },
    { kind: "stock", id: "b", value: needles("b", "LOT-B", 1, morningMs + 3 * hourMs) },
  ]);
  const left = (records: Parameters<typeof leftOnShelf>[1]) =>
    Object.fromEntries(leftOnShelf(studio, records).shelf.stock.map(({ id, quantity }) => [id, quantity]));

  it("is what was counted less what sessions opened since, out of the lot that was given", () => {
    const given = { item: "needle", lot: "LOT-B", expiry: null, known: "typed" as const };
    expect(left([sessionAt("one", 1), sessionAt("two", 4, [given])])).toEqual({ a: 9, b: 0 });
  });

  it("is not touched by a session from before the count", () => {
    expect(left([sessionAt("early", -1)])).toEqual({ a: 10, b: 1 });
    expect(leftOnShelf(studio, [sessionAt("early", -1)])).toMatchObject({ sessions: 0 });
  });

  it("says how many were used beyond what the shelf knew of", () => {
    const few = studioOf([needleRow, assigned, { kind: "stock", id: "a", value: needles("a", "LOT-A", 1) }]);
    const { beyond, shelf } = leftOnShelf(few, [sessionAt("one", 1), sessionAt("two", 2)]);
    expect(beyond.get("needle")).toBe(1);
    expect(shelf.stock[0]?.quantity).toBe(0);
  });

  it("asks only for records since the first count", () => {
    expect(countedSinceMs(studio)).toBe(morningMs);
    expect(countedSinceMs(studioOf([]))).toBe(Infinity);
  });
});

describe("the steriliser log as a whole", () => {
  const rows: readonly Change[] = [
    { kind: "cycle", id: "C1", value: cycle("C1", { biological: "negative" }) },
    { kind: "cycle", id: "C2", value: cycle("C2") },
    { kind: "cycle", id: "C3", value: cycle("C3", { biological: "positive" }) },
    ...["1", "2", "3"].map((n): Change => ({ kind: "pack", id: `P${n}`, value: pack(`P${n}`, `C${n}`) })),
  ];
  const used = sessionAt("wednesday", 5, [{ item: "grip", lot: "P2", expiry: null, known: "typed" }]);

  it("lists the sessions that used packs of a failed test, back to the last good one", () => {
    expect(recalls(studioOf(rows), [used, sessionAt("thursday", 6)])).toEqual([
      {
        cycleId: "C3",
        recall: {
          suspectCycleIds: ["C2", "C3"],
          usedPackIds: ["P2"],
          unusedPackIds: ["P3"],
          sessionIds: ["wednesday"],
          action: "test-again",
        },
      },
    ]);
  });

  it("calls no pack sterile that a failed test put in doubt, and offers none of them", () => {
    const states = packStates(studioOf(rows), today).map(({ pack: { id }, state }) => [id, state]);
    expect(states).toEqual([
      ["P1", "sterile"],
      ["P2", "under recall"],
      ["P3", "under recall"],
    ]);
    expect(packOffers(studioOf(rows), today).map(({ lot }) => lot)).toEqual(["P1"]);
  });

  it("names the cycles in doubt, and none without a failed test", () => {
    expect([...suspectCycles(studioOf(rows))]).toEqual(["C2", "C3"]);
    expect([...suspectCycles(studioOf(rows.slice(0, 2)))]).toEqual([]);
  });

  it("does not offer a pack that a session was given already", () => {
    const ofOne = [{ item: "grip", lot: "P1", expiry: null, known: "typed" as const }];
    expect(packOffers(studioOf(rows), today, [sessionAt("used", 5, ofOne)])).toEqual([]);
  });

  it("accepts no cycle with a broken hold, a failed indicator or the wrong load", () => {
    const good = cycle("C1");
    expect(isAccepted(good)).toBe(true);
    expect(isAccepted(cycle("C1", { integrator: "failed" }))).toBe(false);
    expect(isAccepted(cycle("C1", { cycleClass: "N" }))).toBe(false);
    expect(isAccepted(cycle("C1", { verdict: { ...good.entry.verdict, code: "held-in-air" } }))).toBe(false);
    expect(isAccepted({ ...cycle("C1", { cycleClass: "S" }), statedByMaker: ["wrapped-solid"] })).toBe(true);
  });

  it("calls a pack of a cycle that is not in the log not accepted", () => {
    expect(packStates(studioOf([{ kind: "pack", id: "P9", value: pack("P9", "C9") }]), today)[0]?.state).toBe(
      "cycle not accepted",
    );
  });

  it("knows the day of the last biological test, by the studio's calendar", () => {
    expect(lastBiological(studioOf(rows), "A1", zone)).toEqual(today);
    expect(lastBiological(studioOf(rows), "A2", zone)).toBeNull();
  });
});

describe("what a session is offered", () => {
  const mixAt = (madeAtMs: number, hours?: number) =>
    mixedProduct({
      id: "M1",
      name: "Bleach mix",
      resulting: strength("gramsPerLitre", ratio(1)),
      useBy: keptUntil(madeAtMs, hours),
      fromItemId: "spray",
      contactS: 600,
    });
  const withMix = (product: ReturnType<typeof mixAt>) =>
    studioOf([{ kind: "mix", id: "M1", value: { product, madeFrom: spray, printed: ["Bleach mix"], spoken: "mix" } }]);
  const offers = (studio: Studio, nowMs: number) => labelOffers(studio, "surfaceDisinfectant", nowMs, zone);

  it("is the label of usable stock, for each use that it has a contact time for", () => {
    const studio = studioOf([
      { kind: "product", id: "spray", value: spray },
      { kind: "stock", id: "s1", value: { line: stockLine({ openedOn: "2026-11-01" }), countedAtMs: 0 } },
      { kind: "stock", id: "old", value: { line: stockLine({ id: "old", expiry: "2026-11-24" }), countedAtMs: 0 } },
    ]);
    expect(offers(studio, morningMs).map(({ label }) => [label.contactSec, label.expiry])).toEqual([
      [300, "2027-01-30"],
      [600, "2027-01-30"],
    ]);
    expect(labelOffers(studio, "handRub", morningMs, zone)).toEqual([]);
  });

  it("is a mix until the day before its use-by falls, never after", () => {
    const studio = withMix(mixAt(morningMs));
    expect(offers(studio, morningMs + hourMs)[0]?.label).toMatchObject({ contactSec: 600, expiry: "2026-11-25" });
    expect(offers(studio, morningMs + 16 * hourMs)).toEqual([]);
    expect(offers(studio, morningMs - 1)).toEqual([]);
    expect(offers(withMix(mixAt(morningMs, 4)), morningMs + hourMs)).toEqual([]);
  });

  it("is the lot of the product that stands behind an item, what runs out first before the rest", () => {
    const later = { ...needles("b", "LOT-B", 5), line: { ...needles("b", "LOT-B", 5).line, expiry: "2026-12-01" } };
    const studio = studioOf([
      needleRow,
      assigned,
      { kind: "stock", id: "a", value: needles("a", "LOT-A", 5) },
      { kind: "stock", id: "b", value: later },
    ]);
    expect(lotOffers(studio, "cartridgeMachine", "needle", today).map(({ lot, expiry }) => [lot, expiry])).toEqual([
      ["LOT-B", "2026-12-01"],
      ["LOT-A", "2027-06-30"],
    ]);
    expect(lotOffers(studio, "cartridgeMachine", "grip", today)).toEqual([]);
  });
});

describe("the place", () => {
  it("is careful defaults until one is chosen, and the studio's own lines over it", () => {
    expect(placeOf(studioOf([]))).toMatchObject({ isChosen: false, place: { id: "elsewhere" } });
    const value = {
      placeId: "texas",
      overrides: [
        { lineId: "age.minimum", value: { kind: "age", minimumYears: 21 }, reason: "house rule", year: 2026 },
      ],
    } as const;
    const own = placeOf(
      studioOf([{ kind: "place", id: onlyId, value: { ...value, overrides: [...value.overrides] } }]),
    );
    expect(own.place.lines.find(({ id }) => id === "age.minimum")).toMatchObject({ status: "studio's own" });
  });

  it("goes back to careful defaults, and says so, where the chosen one is not known any more", () => {
    const studio = studioOf([{ kind: "place", id: onlyId, value: { placeId: "atlantis", overrides: [] } }]);
    expect(placeOf(studio)).toMatchObject({ place: { id: "elsewhere" }, trouble: expect.stringContaining("atlantis") });
  });
});

describe("numbers of cycles and packs", () => {
  it("go on from the highest there is", () => {
    expect(nextNumber("C", [])).toBe("C1");
    expect(nextNumber("C", ["C2", "C10", "P12", "Cx"])).toBe("C11");
  });
});
