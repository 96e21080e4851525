/** The product form: what it comes to, and what is still to mend. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { needle, spray } from "../../../shelf/examples";
import { emptyProduct, type ProductDraft, productDraftOf, productFrom } from "./productDraft";

const typed = (change: Partial<ProductDraft>) =>
  productFrom({ ...emptyProduct, name: "Spray A", times: [{ use: "surfaces", contact: "5 min" }], ...change }, "X1");

describe("the product form", () => {
  it.each([spray, needle])("gives $name back as it was", (product) => {
    expect(productFrom(productDraftOf(product), product.id)).toEqual({ ok: true, product });
  });

  it("reads a label as it is copied", () => {
    expect(typed({ reapply: "2 min", hoursDiluted: "12", orderBelow: "1", orderTo: "3" })).toMatchObject({
      ok: true,
      product: { label: { contactTimes: [{ use: "surfaces", contactS: 300 }], reapplyWithinS: 120, hoursDiluted: 12 } },
    });
  });

  it("keeps a time after opening for ink, which has no contact time", () => {
    const ink = typed({ kind: "ink", unit: "mL", times: [], daysAfterOpening: "365" });
    expect(ink).toMatchObject({ ok: true, product: { label: { contactTimes: [], daysAfterOpening: 365 } } });
  });

  it.each([
    [{ name: " " }, { name: "missing" }],
    [{ times: [] }, { times: "contactNeeded" }],
    [{ times: [{ use: "surfaces", contact: "5" }] }, { times: "notATime" }],
    [{ times: ["1 min", "2 min"].map((contact) => ({ use: "blood", contact })) }, { times: "useTwice" }],
    [{ reapply: "5 s" }, { reapply: "notATime" }],
    [{ daysAfterOpening: "0" }, { daysAfterOpening: "notWhole" }],
    [{ orderBelow: "5", orderTo: "4" }, { orderTo: "orderTo" }],
    [{ orderBelow: "some" }, { orderBelow: "notWhole" }],
  ])("says what is to mend in %j", (change, troubles) => {
    expect(typed(change)).toEqual({ ok: false, troubles });
  });

  const text = fc.string({ maxLength: 12 });
  property.prop([fc.record({ name: text, orderBelow: text, orderTo: text, reapply: text, daysAfterOpening: text })])(
    "answers whatever is typed, and never with a product that has not its shape",
    (change) => {
      expect(typeof typed(change).ok).toBe("boolean");
    },
  );
});
