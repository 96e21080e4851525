/** The shelf: label facts, last days, warnings ahead, needs, consumption and the order. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it, test } from "vitest";
import { addDays, date, showDate } from "../due/calendar";
import { type Consumption, countDown, needsAgainstShelf, reorderList } from "./count";
import { fullYear, parsePrintedExpiry } from "./printedExpiry";
import { contactSFor, Product, Shelf, type Stock } from "./product";
import { isUsable, limitOf, shelfWarnings } from "./usable";
import { shelfView } from "./view";

const today = date("2026-11-25");

const spray = Product.parse({
  id: "spray",
  name: "Surface disinfectant A",
  kind: "disinfectant",
  unit: "mL",
  orderBelow: 500,
  orderTo: 2000,
  label: {
    contactTimes: [
      { use: "surfaces", contactS: 300 },
      { use: "blood", contactS: 600 },
    ],
    reapplyWithinS: 120,
    cleanFirst: true,
    rinseAfter: false,
    daysAfterOpening: 90,
    hoursDiluted: null,
    known: "label",
  },
});
const needle = Product.parse({
  id: "needle",
  name: "Needle 7RL",
  kind: "needle",
  unit: "piece",
  label: null,
  orderBelow: 10,
  orderTo: 50,
});
const stock = (changes: Partial<Stock> = {}): Stock => ({
  id: "s1",
  productId: "spray",
  lot: "L1",
  expiry: "2027-06-30",
  openedOn: null,
  quantity: 1000,
  ...changes,
});
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

describe("a date printed on a box", () => {
  const read = (text: string, year = 2026) => {
    const found = parsePrintedExpiry(text, year);
    return found.ok ? showDate(found.value.date) : found.code;
  };

  // Century rule of the GS1 syntax dictionary's date linter.
  test.each([
    [
      2026,
      [
        [0, 2000],
        [25, 2025],
        [26, 2026],
        [75, 2075],
        [76, 2076],
        [77, 1977],
        [99, 1999],
      ],
    ],
    [
      2030,
      [
        [80, 2080],
        [81, 1981],
      ],
    ],
    [
      2050,
      [
        [0, 2100],
        [1, 2001],
        [99, 2099],
      ],
    ],
    [
      2060,
      [
        [10, 2110],
        [11, 2011],
      ],
    ],
    [
      1999,
      [
        [49, 2049],
        [50, 1950],
      ],
    ],
  ])("in %d its two digits mean the right century", (current, pairs) => {
    expect(pairs.map(([digits]) => fullYear(digits ?? -1, current))).toEqual(pairs.map(([, year]) => year));
  });

  it("with day 00 ends with the month, and warns (GS1 GSCN 21-040)", () => {
    expect(["260200", "280200", "260400", "261200"].map((text) => read(text))).toEqual([
      "2026-02-28",
      "2028-02-29",
      "2026-04-30",
      "2026-12-31",
    ]);
    expect(parsePrintedExpiry("260200", 2026)).toMatchObject({ value: { warning: "day-not-printed" } });
    expect(parsePrintedExpiry("260228", 2026)).toMatchObject({ value: { warning: null } });
  });

  // Unit tests of the GS1 syntax dictionary's date linter, with its own current year 2021.
  it.each(["000606", "250606", "990606", "200229", "240229", "200600"])("%s is a date", (text) => {
    expect(parsePrintedExpiry(text, 2021).ok).toBe(true);
  });

  it.each(["201310", "200132", "210229", "200431", "11111", "1111111", "2x0131"])("%s is not", (text) => {
    expect(read(text, 2021)).toBe("bad-date");
  });
});
