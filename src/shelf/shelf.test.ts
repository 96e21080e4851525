/** The shelf: label facts, last days, warnings ahead, needs, consumption and the order. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it, test } from "vitest";
import { addDays, date, showDate } from "../due/calendar";
import { needle, spray, stockLine as stock } from "./examples";
import { contactSFor, Product, Shelf, type Stock } from "./product";
import { isUsable, limitOf, shelfWarnings } from "./usable";
import { shelfView } from "./view";

const today = date("2026-11-25");

const shelf = (lines: readonly Stock[]): Shelf => Shelf.parse({ products: [spray, needle], stock: lines });

describe("what the shelf holds", () => {
  it("has a contact time for each use on the label", () => {
    expect([contactSFor(spray, "surfaces"), contactSFor(spray, "blood"), contactSFor(spray, "hands")]).toEqual([
      300,
      600,
      undefined,
    ]);
  });

  it.each([
    [{ ...spray, label: null }],
    [{ ...spray, label: { ...spray.label, contactTimes: [] } }],
    [{ ...spray, orderTo: 1 }],
    [{ ...spray, colour: "blue" }],
    [{ ...spray, id: "" }],
  ])("refuses a product that lacks what its kind needs (%#)", (product) => {
    expect(Product.safeParse(product).success).toBe(false);
  });

  it("refuses stock of nothing, a doubled id and a date that does not exist", () => {
    const of = (lines: readonly unknown[]) => Shelf.safeParse({ products: [spray], stock: lines }).success;
    expect([
      of([stock()]),
      of([stock({ productId: "ghost" })]),
      of([stock(), stock()]),
      of([stock({ expiry: "2026-02-30" })]),
    ]).toEqual([true, false, false, false]);
  });
});

describe("the last day of use", () => {
  test.each([
    [{}, "2027-06-30", "expiry"],
    [{ openedOn: "2026-11-01" }, "2027-01-30", "opened"],
    [{ openedOn: "2026-11-01", expiry: "2026-12-01" }, "2026-12-01", "expiry"],
    [{ openedOn: "2026-11-01", expiry: null }, "2027-01-30", "opened"],
  ] as const)("of %j is %s, by %s", (changes, through, because) => {
    const limit = limitOf(stock(changes), spray);
    expect([limit && showDate(limit.through), limit?.because]).toEqual([through, because]);
  });

  it("is usable through the end of the stated day (GS1, from memory)", () => {
    const line = stock({ expiry: "2026-11-25" });
    expect([isUsable(line, spray, today), isUsable(line, spray, addDays(today, 1))]).toEqual([true, false]);
  });

  it("is none where nothing is printed and nothing was opened", () => {
    expect(limitOf(stock({ expiry: null }), spray)).toBeNull();
  });
});

describe("warnings ahead of time", () => {
  it("come the most pressing first, each with its last day", () => {
    const lines = [
      stock({ id: "later", expiry: "2027-06-30" }),
      stock({ id: "soon", expiry: "2026-12-10" }),
      stock({ id: "past", expiry: "2026-11-24" }),
      stock({ id: "open", openedOn: "2026-09-01" }),
      stock({ id: "open-long", openedOn: "2026-08-01" }),
      stock({ id: "undated", expiry: null }),
      stock({ id: "empty", expiry: "2026-11-01", quantity: 0 }),
    ];
    expect(shelfWarnings(shelf(lines), today).map((w) => [w.stockId, w.code])).toEqual([
      ["open-long", "open-too-long"],
      ["past", "expired"],
      ["open", "open-ends-soon"],
      ["soon", "expires-soon"],
      ["undated", "expiry-unknown"],
    ]);
  });

  property.prop([fc.integer({ min: -100, max: 100 }), fc.integer({ min: 0, max: 60 })])(
    "begin exactly that many days ahead and never stop",
    (left, ahead) => {
      const line = stock({ expiry: showDate(addDays(today, left)) });
      expect(shelfWarnings(shelf([line]), today, ahead)).toHaveLength(left <= ahead ? 1 : 0);
    },
  );
});

describe("the shelf screen", () => {
  it("shows each line with its last day and mark, and says aloud what the session lacks", () => {
    const view = shelfView(
      shelf([stock({ openedOn: "2026-11-01" }), stock({ id: "past", expiry: "2026-11-01", quantity: 5 })]),
      today,
      [{ productId: "needle", quantity: 3 }],
    );
    expect(view.rows.map((row) => [row.quantity, row.usable, row.warning])).toEqual([
      ["1000 mL", "through 2027-01-30 (opened)", null],
      ["5 mL", "through 2026-11-01", "expired"],
    ]);
    expect(view.spoken).toBe("Missing: Needle 7RL, 3. 1 out of date on the shelf.");
    expect(view.reorder.map((row) => row.order)).toEqual([53]);
  });
});
