/** What is left, what a session lacks, and what to order. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { date } from "../due/calendar";
import { type Consumption, countDown, needsAgainstShelf, reorderList } from "./count";
import { needle, spray, stockLine as stock } from "./examples";
import { Shelf, type Stock } from "./product";

const today = date("2026-11-25");
const shelf = (lines: readonly Stock[]): Shelf => Shelf.parse({ products: [spray, needle], stock: lines });

describe("consumption and needs", () => {
  const lines = [
    stock({ id: "old", expiry: "2026-12-31", quantity: 100 }),
    stock({ id: "new", quantity: 1000 }),
    stock({ id: "past", expiry: "2026-11-01", quantity: 500 }),
  ];
  const use = (quantity: number, stockId: string | null = null): Consumption => ({
    productId: "spray",
    stockId,
    quantity,
    on: today,
  });
  const leftOf = (uses: readonly Consumption[]) =>
    countDown(shelf(lines), uses).shelf.stock.map((line) => line.quantity);

  it("takes from what runs out of date first, and never from what is past", () => {
    expect(leftOf([use(150)])).toEqual([0, 950, 500]);
  });

  it("takes from the line that the record names, past or not: reality is counted", () => {
    expect(leftOf([use(150, "past")])).toEqual([100, 1000, 350]);
  });

  it("counts a use beyond the shelf instead of refusing it", () => {
    const counted = countDown(shelf(lines), [use(2000)]);
    expect(counted.beyond.get("spray")).toBe(900);
    expect(counted.shelf.stock.map((line) => line.quantity)).toEqual([0, 0, 500]);
  });

  it("sets what a session needs against what may be used that day", () => {
    const needs = [
      { productId: "spray", quantity: 700 },
      { productId: "spray", quantity: 500 },
      { productId: "wipes", quantity: 4 },
    ];
    expect(needsAgainstShelf(needs, shelf(lines), today)).toEqual([
      { productId: "spray", name: "Surface disinfectant A", needed: 1200, usable: 1100, unusable: 500, short: 100 },
      { productId: "wipes", name: "wipes", needed: 4, usable: 0, unusable: 0, short: 4 },
    ]);
  });

  it("orders what has run low, counting the needs ahead", () => {
    const held = shelf([stock({ quantity: 600 }), { ...stock({ id: "n", productId: "needle" }), quantity: 12 }]);
    expect(reorderList(held, today)).toEqual([]);
    expect(reorderList(held, today, [{ productId: "spray", quantity: 200 }])).toEqual([
      { productId: "spray", name: "Surface disinfectant A", usable: 600, order: 1600, unit: "mL" },
    ]);
    expect(reorderList(shelf([]), today).map((row) => [row.productId, row.order])).toEqual([
      ["spray", 2000],
      ["needle", 50],
    ]);
  });

  const anyUses = fc.array(fc.tuple(fc.integer({ min: 0, max: 500 }), fc.constantFrom(null, "old", "new", "past")), {
    maxLength: 12,
  });
  property.prop([anyUses])(
    "what was there is what is left plus what was used, less what the shelf never had",
    (list) => {
      const uses = list.map(([quantity, stockId]) => use(quantity, stockId));
      const counted = countDown(shelf(lines), uses);
      const left = counted.shelf.stock.reduce((sum, line) => sum + line.quantity, 0);
      const used = uses.reduce((sum, u) => sum + u.quantity, 0);
      expect(left + used - (counted.beyond.get("spray") ?? 0)).toBe(1600);
      expect(counted.shelf.stock.every((line) => line.quantity >= 0)).toBe(true);
    },
  );

  property.prop([anyUses])("after the order arrives, nothing is low", (list) => {
    const counted = countDown(
      shelf(lines),
      list.map(([quantity, stockId]) => use(quantity, stockId)),
    ).shelf;
    const arrived = reorderList(counted, today).map(
      (row, i): Stock => ({ ...stock({ id: `new-${i}`, productId: row.productId }), quantity: row.order }),
    );
    expect(reorderList({ ...counted, stock: [...counted.stock, ...arrived] }, today)).toEqual([]);
  });
});
