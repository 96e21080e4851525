/** The verdict: the unbroken hold first, F0 only beside it, and no verdict made better by taking readings away. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it, test } from "vitest";
import { bandById, bands, inBand, showBand, standardFor } from "./bands";
import { table7 } from "./cdcTable7";
import { findHold, lengthMs } from "./hold";
import { judgeCycle, judgeHandEntry, sayVerdict } from "./judge";
import { entryVerdict, SteriliserLogEntry } from "./logEntry";
import { plotCycle } from "./plot";
import type { Reading } from "./reading";
import { saturationKPa } from "./steam";

function band(id: string) {
  const found = bandById(id);
  if (!found) throw new Error(`no band ${id}`);
  return found;
}

const readings = (celsius: readonly number[], everyMs = 60_000): Reading[] =>
  celsius.map((c, i) => ({ tMs: i * everyMs, celsius: c, kPaAbs: null }));
const steam = (celsius: readonly number[]): Reading[] =>
  readings(celsius).map((r) => ({ ...r, kPaAbs: saturationKPa(r.celsius) }));
const dipped = readings([134, 134, 134, 128, 134, 134, 134]);

describe("the hold", () => {
  it("fails a cycle with F0 of 99 minutes whose band was left for one reading", () => {
    const verdict = judgeCycle(dipped, band("en-134"));
    expect(verdict).toMatchObject({
      accepted: false,
      code: "not-held",
      heldMs: 120_000,
      hold: { fromMs: 0, toMs: 120_000 },
    });
    expect(verdict.breaks).toEqual([{ atMs: 180_000, kind: "below", celsius: 128 }]);
    expect(verdict.lethality.minutes).toBeGreaterThan(99);
  });

  it("accepts three unbroken minutes at 134 to 137 °C", () => {
    expect(judgeCycle(steam([130, 134, 135, 136, 134, 120]), band("en-134"))).toMatchObject({
      accepted: true,
      code: "held",
      heldMs: 180_000,
    });
  });

  it("fails a hold that is short by one millisecond", () => {
    const short = steam([134, 134, 134, 134]).map((r, i) => (i === 3 ? { ...r, tMs: r.tMs - 1 } : r));
    expect(judgeCycle(short, band("en-134")).code).toBe("not-held");
  });

  it("breaks at the top of the band too, and says so", () => {
    expect(judgeCycle(readings([134, 135, 138, 135, 134]), band("en-134")).breaks).toEqual([
      { atMs: 120_000, kind: "above", celsius: 138 },
    ]);
  });

  it("takes either published width: 138 °C is inside 134 + 4 K and outside 134 + 3 K", () => {
    expect([inBand(138, band("small-134")), inBand(138, band("en-134"))]).toEqual([true, false]);
  });

  it("proves nothing across a gap without readings", () => {
    const sparse = [0, 15].map((minute) => ({ tMs: minute * 60_000, celsius: 121.1, kPaAbs: null }));
    expect(judgeCycle(sparse, band("en-121"))).toMatchObject({
      code: "not-held",
      heldMs: 0,
      breaks: [{ atMs: 0, kind: "gap", celsius: null }],
    });
    expect(judgeCycle(sparse, band("en-121"), { mostGapMs: 900_000 })).toMatchObject({ code: "held" });
  });

  it("does not accept a hold in air or superheat", () => {
    const off = (kPa: number) => steam([134, 134, 134, 134]).map((r) => ({ ...r, kPaAbs: (r.kPaAbs ?? 0) + kPa }));
    expect(judgeCycle(off(40), band("en-134"))).toMatchObject({ accepted: false, code: "held-in-air" });
    expect(judgeCycle(off(-40), band("en-134"))).toMatchObject({ accepted: false, code: "held-in-superheat" });
  });

  it("is judged for no readings at all", () => {
    expect(judgeCycle([], band("en-134"))).toMatchObject({ code: "not-held", hold: null, heldMs: 0 });
  });
});

describe("what must be held", () => {
  // EN 285 / HTM 01-01 (from memory); CDC 2008 Table 7.
  test.each([
    ["en-121", "121-124 °C for 15 min"],
    ["en-126", "126-129 °C for 10 min"],
    ["en-134", "134-137 °C for 3 min"],
    ["en-134-prion", "134-137 °C for 18 min"],
    ["bowie-dick", "134-137 °C for 3.5 min"],
    ["cdc-gravity-instruments-121", "121 °C or above for 30 min"],
    ["cdc-gravity-instruments-132", "132 °C or above for 15 min"],
    ["cdc-gravity-textiles-121", "121 °C or above for 30 min"],
    ["cdc-gravity-textiles-132", "132 °C or above for 25 min"],
    ["cdc-gravity-utensils-121", "121 °C or above for 30 min"],
    ["cdc-gravity-utensils-132", "132 °C or above for 15 min"],
    ["cdc-prevacuum-instruments-132", "132 °C or above for 4 min"],
    ["cdc-prevacuum-textiles-132", "132 °C or above for 4 min"],
    ["cdc-prevacuum-utensils-132", "132 °C or above for 4 min"],
  ])("%s is %s", (id, words) => {
    expect(showBand(band(id))).toBe(words);
  });

  it("dries for the minutes of CDC 2008 Table 7", () => {
    expect(table7.map((row) => row.dryingMin)).toEqual([
      [15, 30],
      [15, 15],
      [15, 30],
      [20, 30],
      [5, 20],
      [20, 20],
    ]);
    expect(bandById("cdc-prevacuum-instruments-121")).toBeUndefined(); // "not applicable" in the table
  });

  it("comes from EN 13060 up to 60 litres without room for a module, from EN 285 beyond", () => {
    const standards = [
      [18, false],
      [60, false],
      [60, true],
      [61, false],
    ] as const;
    expect(standards.map(([litres, takesOneModule]) => standardFor({ litres, takesOneModule }))).toEqual([
      "EN 13060",
      "EN 13060",
      "EN 285",
      "EN 285",
    ]);
  });
});

describe("the words", () => {
  it("name the hold first and F0 second with its method, never rounding up", () => {
    const short = steam([134, 134, 134, 134]).map((r, i) => (i === 3 ? { ...r, tMs: 178_000 } : r));
    expect(sayVerdict(judgeCycle(short, band("en-134")))).toMatch(
      /^NOT held: 134-137 °C for 3 min is needed, the longest unbroken stay was 2\.9 min\. F0 57\.\d min \(exactRamp, 121\.1 °C, z 10 K\)\.$/,
    );
  });

  it("say when air could not be checked, and when a person read it", () => {
    const entry = { coolestC: 134.1, hottestC: 136, heldMs: 210_000, kPaAbs: null };
    expect(sayVerdict(judgeHandEntry(entry, band("en-134")))).toMatch(
      /^Held .* No pressure recorded: air was not checked\. As read by hand\.$/,
    );
  });
});

describe("a hand entry", () => {
  const entry = { coolestC: 134, hottestC: 136, heldMs: 180_000, kPaAbs: 310 };

  test.each([
    [{}, "held"],
    [{ coolestC: 133.9 }, "not-held"],
    [{ hottestC: 137.1 }, "not-held"],
    [{ heldMs: 179_999 }, "not-held"],
    [{ kPaAbs: 350 }, "held-in-air"],
    [{ coolestC: Number.NaN }, "not-held"],
  ])("with %j is %s", (changes, code) => {
    expect(judgeHandEntry({ ...entry, ...changes }, band("en-134")).code).toBe(code);
  });
});

const anyBand = fc.constantFrom(...bands);
const nearBand = fc
  .tuple(
    anyBand,
    fc.array(fc.tuple(fc.integer({ min: 1, max: 70_000 }), fc.integer({ min: -2, max: 6 })), {
      minLength: 1,
      maxLength: 80,
    }),
  )
  .map(([b, steps]) => {
    let tMs = 0;
    const cycle = steps.map(([dt, above]): Reading => {
      tMs += dt;
      return { tMs, celsius: b.lowC + above, kPaAbs: null };
    });
    return { band: b, cycle };
  });

describe("for every cycle", () => {
  property.prop([nearBand, fc.nat()], { numRuns: 500 })(
    "taking away a reading inside the band never lengthens the hold",
    ({ band: b, cycle }, which) => {
      const hot = cycle.filter((reading) => inBand(reading.celsius, b));
      const taken = hot[which % Math.max(1, hot.length)];
      const fewer = cycle.filter((reading) => reading !== taken);
      expect(lengthMs(findHold(fewer, b).longest)).toBeLessThanOrEqual(lengthMs(findHold(cycle, b).longest));
    },
  );

  property.prop([nearBand])(
    "the hold is made only of readings inside the band, none of them far apart",
    ({ band: b, cycle }) => {
      const { longest } = findHold(cycle, b);
      const during = cycle.filter((r) => longest !== null && r.tMs >= longest.fromMs && r.tMs <= longest.toMs);
      expect(during.every((r) => inBand(r.celsius, b))).toBe(true);
      expect(during.every((r, i) => i === 0 || r.tMs - (during[i - 1]?.tMs ?? 0) <= 60_000)).toBe(true);
    },
  );

  property.prop([nearBand])("no longer run of readings exists than the one found", ({ band: b, cycle }) => {
    const lengths = cycle.flatMap((from, i) =>
      cycle
        .slice(i)
        .filter((_to, k) =>
          cycle
            .slice(i, i + k + 1)
            .every((r, m, run) => inBand(r.celsius, b) && (m === 0 || r.tMs - (run[m - 1]?.tMs ?? 0) <= 60_000)),
        )
        .map((to) => to.tMs - from.tMs),
    );
    expect(lengthMs(findHold(cycle, b).longest)).toBe(Math.max(0, ...lengths));
  });
});

describe("what is kept and drawn", () => {
  it("is a log entry with the number's method beside it", () => {
    const entry = {
      cycleId: "c1",
      steriliserId: "s1",
      atMs: 0,
      cycleClass: "B",
      load: ["wrapped-solid"],
      contents: "4 grips",
      operator: "AB",
      verdict: entryVerdict(judgeCycle(steam([134, 134, 134, 134]), band("en-134"))),
      integrator: "passed",
      biological: "none",
      afterPositive: "",
    };
    expect(SteriliserLogEntry.parse(JSON.parse(JSON.stringify(entry)))).toEqual(entry);
    expect(SteriliserLogEntry.safeParse({ ...entry, extra: 1 }).success).toBe(false);
  });

  it("draws curve, band, hold and breaks, with the verdict in words", () => {
    const plot = plotCycle(dipped, judgeCycle(dipped, band("en-134")), 600, 300);
    expect(plot?.curve.split(" ")).toHaveLength(7);
    expect(plot?.hold).toMatchObject({ x: 0, width: 200 });
    expect(plot?.breaks).toEqual([{ x: 300, label: "fell below the band" }]);
    expect(plot?.description).toMatch(/^NOT held/);
    expect(plotCycle([], judgeCycle([], band("en-134")))).toBeNull();
  });

  property.prop([nearBand])("keeps every point inside the frame", ({ band: b, cycle }) => {
    fc.pre(cycle.length > 1);
    const plot = plotCycle(cycle, judgeCycle(cycle, b), 600, 300);
    const points = plot?.curve.split(" ").flatMap((point) => point.split(",").map(Number)) ?? [];
    expect(points.every((v, i) => v >= 0 && v <= (i % 2 === 0 ? 600 : 300))).toBe(true);
    expect(plot?.timeTicks.length).toBeLessThanOrEqual(9);
  });
});
