/** The mixing form: what it shows, what it always warns of, what it refuses, and the bottle's label and use-by. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { ratio } from "../sums/ratio";
import { measuredUp } from "./measured";
import { MixedProduct, mixedProduct } from "./mixedProduct";
import { toGramsPerLitre } from "./units";
import { keptUntil, mixUsable } from "./useBy";
import { type MixForm, mixView, stockKinds } from "./view";

const madeAtMs = Date.parse("2026-11-25T06:40:00Z");
const form: MixForm = {
  kind: "liquid",
  stock: "5 %",
  target: "1000 ppm",
  volume: "1 L",
  companions: [],
  productName: "Surface disinfectant A",
  madeBy: "AB",
  madeAtMs,
  labelHours: "",
  zone: "Europe/Berlin",
};

function shown(changes: Partial<MixForm> = {}) {
  const view = mixView({ ...form, ...changes });
  if (!view.ok) throw new Error(view.words);
  return view.value;
}

describe("the mixing form", () => {
  it("shows added-to and made-up-to, which differ", () => {
    expect(shown().lines.slice(0, 3)).toEqual([
      "1 part stock to 49 parts water",
      "added to 1000 mL water: 20.4082 mL stock (1020.4082 mL in all)",
      "made up to 1000 mL: 20 mL stock, 980 mL water",
    ]);
  });

  it("answers by voice with what to measure, and never to mix", () => {
    expect(shown().spoken).toBe(
      "20 millilitres of stock, then water up to 1000 millilitres. Never mix with anything else.",
    );
    expect(shown({ kind: "tablet", stock: "1.5 g", target: "0.5%" }).spoken).toMatch(
      /^4 tablets in 1000 millilitres\./,
    );
  });

  it("always warns never to mix, whatever is mixed", () => {
    const stocks = { liquid: "5%", powder: "70%", tablet: "1.5 g", alcohol: "96%" } as const;
    const targets = { liquid: "0.5%", powder: "0.5%", tablet: "0.5%", alcohol: "70%" } as const;
    const first = stockKinds.map(
      (kind) => shown({ kind, stock: stocks[kind], target: targets[kind] }).cautions[0]?.code,
    );
    expect(first).toEqual(["never-mix", "never-mix", "never-mix", "never-mix"]);
  });

  it("warns that alcohol shrinks, and of a strength outside 60 to 90 %", () => {
    const codes = shown({ kind: "alcohol", stock: "96%", target: "40%" }).cautions.map((c) => c.code);
    expect(codes).toContain("make-up-to");
    expect(codes).toContain("outside-60-to-90");
  });

  it.each(["vinegar", "ammonia", "descaler (acid)", "washing-up liquid", "another disinfectant"])(
    "refuses %s in the bottle",
    (name) => {
      expect(mixView({ ...form, companions: ["water", name] })).toMatchObject({ ok: false, code: "never-mix" });
    },
  );

  it("refuses chlorine against alcohol, and a powder strength in ppm", () => {
    expect(mixView({ ...form, target: "70 % v/v" })).toMatchObject({ ok: false, code: "units-do-not-meet" });
    expect(mixView({ ...form, kind: "alcohol", stock: "96%", target: "500 ppm" })).toMatchObject({
      ok: false,
      code: "units-do-not-meet",
    });
    expect(mixView({ ...form, kind: "powder", stock: "700000 ppm" })).toMatchObject({
      ok: false,
      code: "units-do-not-meet",
    });
  });

  it.each([
    [{ volume: "0 L" }, "not-positive"],
    [{ volume: "2000 L" }, "too-much"],
    [{ stock: "101 %" }, "strength-impossible"],
    [{ target: "6 %" }, "target-above-stock"],
    [{ target: "0 ppm" }, "not-positive"],
    [{ labelHours: "0" }, "not-positive"],
    [{ labelHours: "9000" }, "too-much"],
    [{ labelHours: "soon" }, "not-a-number"],
  ] as const)("refuses %j as %s", (changes, code) => {
    expect(mixView({ ...form, ...changes })).toMatchObject({ ok: false, code });
  });
});

describe("the bottle", () => {
  it("prints what it is, how strong, made when and by whom, and use before", () => {
    expect(shown().label.printed).toEqual([
      "Surface disinfectant A",
      "1000 ppm (0.1 %)",
      "Made 2026-11-25 07:40 by AB",
      "Use before 2026-11-26 07:40 (24 h)",
      "Never mix with acids, ammonia or other cleaners",
    ]);
  });

  it("keeps 24 hours without a label, across the change to summer time too (CDC CS316270-A)", () => {
    const beforeChange = Date.parse("2026-03-28T12:00:00Z");
    expect(shown({ madeAtMs: beforeChange }).label.printed[3]).toBe("Use before 2026-03-29 14:00 (24 h)");
  });

  it("lets only the label say longer, as the measured lives of Iqbal et al. 2016 would allow", () => {
    const view = shown({ labelHours: "48" });
    expect(view.useBy).toMatchObject({ rule: "label", useByMs: madeAtMs + 48 * 3_600_000 });
  });

  it("is usable until the last millisecond before its use-by, and not from it on", () => {
    const useBy = keptUntil(madeAtMs);
    expect(mixUsable(useBy, useBy.useByMs - 1)).toBe("usable");
    expect(mixUsable(useBy, useBy.useByMs)).toBe("past-use-by");
    expect(mixUsable(useBy, madeAtMs - 1)).toBe("not-yet-made");
  });

  it("becomes a product with its use-by, which round-trips through JSON", () => {
    const view = shown();
    const product = mixedProduct({
      id: "mix-1",
      name: "Surface disinfectant A",
      resulting: view.measured.resulting,
      useBy: view.useBy,
      fromItemId: "stock-1",
      contactS: 300,
    });
    expect(MixedProduct.parse(JSON.parse(JSON.stringify(product)))).toEqual(product);
    expect(product.strength).toEqual({ unit: "gramsPerLitre", amount: "1" });
  });
});

describe("measuring out", () => {
  property.prop([
    fc.integer({ min: 1, max: 5000 }),
    fc.integer({ min: 1, max: 100_000 }),
    fc.integer({ min: 1, max: 50 }),
  ])("rounds the stock up, never to a weaker mix than asked", (targetPpm, ml, step) => {
    const view = shown({ target: `${targetPpm} ppm`, volume: `${ml} mL` });
    const measured = measuredUp(view.mix, ratio(step));
    expect(measured.resulting.unit).toBe("gramsPerLitre");
    expect(measured.resulting.amount.gte(toGramsPerLitre({ unit: "ppm", amount: ratio(targetPpm) }).amount)).toBe(true);
  });
});
