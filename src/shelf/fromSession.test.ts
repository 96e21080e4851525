/** Between shelf and session: needs from the protocol, uses from the facts, and the label a session works by. */
import { describe, expect, it } from "vitest";
import { date } from "../due/calendar";
import { MixedProduct } from "../mixing/mixedProduct";
import { SessionFact } from "../session/fact";
import { Label } from "../session/protocol";
import { cartridgeMachine } from "../session/protocols/cartridge";
import { countDown } from "./count";
import { needle, spray, stockLine } from "./examples";
import { needsOf, usesOf } from "./fromSession";
import { Shelf, type Stock } from "./product";
import { labelForMix, labelForSession } from "./sessionLabel";

const on = date("2026-11-25");
const assigned = { items: { needle: "needle" }, gloves: null };
const needles = (id: string, lot: string): Stock => ({ ...stockLine({ id, lot, quantity: 10 }), productId: "needle" });
const shelf = Shelf.parse({ products: [spray, needle], stock: [needles("a", "LOT-A"), needles("b", "LOT-B")] });
const opensNeedle = cartridgeMachine.setUp.find((step) =>
  step.effects.some((e) => e.verb === "open" && e.item === "needle"),
);

const done = (cause: number) =>
  SessionFact.parse({ type: "v1.StepDone", witnessedMs: 0, cause, step: opensNeedle?.id });
const lotGiven = SessionFact.parse({
  type: "v1.LotGiven",
  witnessedMs: 0,
  cause: 1,
  item: "needle",
  lot: "LOT-B",
  expiry: null,
});
const takenBack = SessionFact.parse({ type: "v1.Undone", witnessedMs: 0, cause: 4, fromCause: 3 });
const uses = (facts: readonly SessionFact[]) => usesOf({ protocol: cartridgeMachine, facts, on }, assigned, shelf);

describe("what a session takes", () => {
  it("is needed once for each opening, and what has no product is named", () => {
    const { needs, unassigned } = needsOf(cartridgeMachine, assigned);
    expect(needs).toEqual([{ productId: "needle", quantity: 1 }]);
    expect(unassigned).toContain("grip");
    expect(unassigned).not.toContain("needle");
  });

  it("needs two gloves for each donning", () => {
    const donned = [...cartridgeMachine.setUp, ...cartridgeMachine.dressing, ...cartridgeMachine.breakdown]
      .flatMap((step) => step.effects)
      .filter((e) => e.verb === "don");
    expect(donned.length).toBeGreaterThan(1);
    expect(needsOf(cartridgeMachine, { ...assigned, gloves: "gloves" }).needs.at(-1)).toEqual({
      productId: "gloves",
      quantity: 2 * donned.length,
    });
  });

  it("is counted from the facts, out of the lot that was read", () => {
    expect(uses([lotGiven, done(2)])).toEqual([{ productId: "needle", stockId: "b", quantity: 1, on }]);
    expect(countDown(shelf, uses([lotGiven, done(2), done(3)])).shelf.stock.map((line) => line.quantity)).toEqual([
      10, 8,
    ]);
  });

  it("counts nothing for what was taken back", () => {
    expect(uses([lotGiven, done(2), done(3), takenBack])).toHaveLength(1);
  });
});

describe("the label a session works by", () => {
  it("carries contact time, re-application and last day from the shelf", () => {
    const made = labelForSession(spray, stockLine({ openedOn: "2026-11-01" }), "surfaces");
    expect(made).toMatchObject({
      value: { contactSec: 300, reapplyWithinSec: 120, oneStep: false, afterwards: "wipe", expiry: "2027-01-30" },
    });
    expect(made.ok && Label.safeParse(made.value).success).toBe(true);
  });

  it("is one step only where the label says so, not on the artist's word", () => {
    const oneStep = (known: "label" | "artist") => {
      const made = labelForSession(
        { ...spray, label: spray.label && { ...spray.label, cleanFirst: false, known } },
        stockLine(),
        "surfaces",
      );
      return made.ok && made.value.oneStep;
    };
    expect([oneStep("label"), oneStep("artist")]).toEqual([true, false]);
  });

  it("is refused for a use the product's label does not know", () => {
    expect(labelForSession(spray, stockLine(), "hands")).toMatchObject({ ok: false, code: "no-contact-time" });
  });

  it("lets a mix last no day that its hour does not cover", () => {
    const mix = MixedProduct.parse({
      id: "m",
      name: "Surface disinfectant A, 1000 ppm",
      kind: "mixed",
      strength: { unit: "gramsPerLitre", amount: "1" },
      madeAtMs: Date.parse("2026-11-25T06:40:00Z"),
      useByMs: Date.parse("2026-11-26T06:40:00Z"),
      useByRule: "24-hours",
      fromItemId: "s1",
      contactS: 600,
    });
    expect(labelForMix(mix, spray, "Europe/Berlin")).toMatchObject({
      value: { contactSec: 600, expiry: "2026-11-25" },
    });
  });
});
