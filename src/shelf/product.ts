/**
 * What a studio keeps: products with the facts of their own label, and stock of them, lot by lot. A contact time is
 * per use, because a label may give one for a wiped chair and another for blood.
 */
import { z } from "zod";
import { parseDate } from "../due/calendar";

export const Day = z.string().refine((text) => parseDate(text).ok, "not a date such as 2026-11-25");

const id = z.string().min(1).max(64);
const words = z.string().min(1).max(120);
const amount = z.int().min(0).max(1_000_000);

/** Facts of the label, or the artist's own entry where the label is silent; `known` says which. */
export const LabelFacts = z.strictObject({
  contactTimes: z
    .array(z.strictObject({ use: words, contactS: z.int().positive().max(86_400) }))
    .max(20)
    .refine((times) => new Set(times.map((time) => time.use)).size === times.length, "one contact time per use"),
  /** Past this without wetting again the surface counts as dry; null where the label does not say. */
  reapplyWithinS: z.int().min(10).max(3600).nullable(),
  cleanFirst: z.boolean(),
  rinseAfter: z.boolean(),
  /** Days it may be used once opened; null where the label does not say. */
  daysAfterOpening: z.int().positive().max(3650).nullable(),
  /** Hours a dilution of it may be used; null: the 24-hour default. */
  hoursDiluted: z.int().positive().max(8784).nullable(),
  known: z.enum(["label", "artist"]),
});
export type LabelFacts = z.infer<typeof LabelFacts>;

export const Product = z
  .strictObject({
    id,
    name: words,
    kind: z.enum(["disinfectant", "antiseptic", "ink", "needle", "single-use", "indicator"]),
    /** Whole units are counted; nothing smaller. */
    unit: z.enum(["mL", "g", "piece", "tablet"]),
    label: LabelFacts.nullable(),
    /** Order when fewer than this can be used, up to `orderTo`. */
    orderBelow: amount,
    orderTo: amount,
  })
  .refine((p) => p.orderTo >= p.orderBelow, { path: ["orderTo"], message: "must not be less than orderBelow" })
  .refine((p) => p.kind !== "disinfectant" || (p.label?.contactTimes.length ?? 0) > 0, {
    path: ["label"],
    message: "a disinfectant needs the contact time of its label",
  });
export type Product = z.infer<typeof Product>;

export const Stock = z.strictObject({
  id,
  productId: id,
  lot: z.string().min(1).max(60).nullable(),
  /** Usable through the end of this day; null where none is printed. */
  expiry: Day.nullable(),
  openedOn: Day.nullable(),
  quantity: amount,
});
export type Stock = z.infer<typeof Stock>;

export const Shelf = z
  .strictObject({ products: z.array(Product).max(2000), stock: z.array(Stock).max(20_000) })
  .superRefine((shelf, context) => {
    const known = new Set(shelf.products.map((p) => p.id));
    if (known.size < shelf.products.length)
      context.addIssue({ code: "custom", path: ["products"], message: "two products have the same id" });
    if (new Set(shelf.stock.map((s) => s.id)).size < shelf.stock.length)
      context.addIssue({ code: "custom", path: ["stock"], message: "two lines of stock have the same id" });
    for (const [index, line] of shelf.stock.entries())
      if (!known.has(line.productId))
        context.addIssue({ code: "custom", path: ["stock", index, "productId"], message: "no such product" });
  });
export type Shelf = z.infer<typeof Shelf>;

/** Contact time for one use, in seconds; undefined where the label gives none for it. */
export function contactSFor(product: Product, use: string): number | undefined {
  return product.label?.contactTimes.find((time) => time.use === use)?.contactS;
}
