/** The product form as text fields, and the product it comes to, or what is still to mend. Pure. */
import { Product } from "../../../shelf/product";
import { readSeconds, readWhole, showSeconds } from "../parts/seconds";

export interface ProductDraft {
  readonly name: string;
  readonly kind: Product["kind"];
  readonly unit: Product["unit"];
  readonly orderBelow: string;
  readonly orderTo: string;
  /** One row for each use named on the label. */
  readonly times: readonly { readonly use: string; readonly contact: string }[];
  readonly reapply: string;
  readonly cleanFirst: boolean;
  readonly rinseAfter: boolean;
  readonly daysAfterOpening: string;
  readonly hoursDiluted: string;
  readonly known: "label" | "artist";
}

export type ProductTrouble = "missing" | "notATime" | "notWhole" | "orderTo" | "useTwice" | "contactNeeded";
export type ProductField = Exclude<keyof ProductDraft, "kind" | "unit" | "cleanFirst" | "rinseAfter" | "known">;
export type FromProductDraft =
  | { readonly ok: true; readonly product: Product }
  | { readonly ok: false; readonly troubles: Partial<Record<ProductField, ProductTrouble>> };

export const emptyProduct: ProductDraft = {
  ...{ name: "", kind: "disinfectant", unit: "mL", orderBelow: "0", orderTo: "0" },
  times: [{ use: "surfaces", contact: "" }],
  ...{ reapply: "", cleanFirst: true, rinseAfter: false, daysAfterOpening: "", hoursDiluted: "", known: "label" },
};

/** Kinds whose label says how long to keep wet. */
export const hasLabel = (kind: Product["kind"]): boolean => kind === "disinfectant" || kind === "antiseptic";

export function productDraftOf({ name, kind, unit, orderBelow, orderTo, label }: Product): ProductDraft {
  const plain = { ...emptyProduct, name, kind, unit, orderBelow: String(orderBelow), orderTo: String(orderTo) };
  if (!label) return plain;
  return {
    ...plain,
    times: label.contactTimes.map(({ use, contactS }) => ({ use, contact: showSeconds(contactS) })),
    reapply: label.reapplyWithinS === null ? "" : showSeconds(label.reapplyWithinS),
    cleanFirst: label.cleanFirst,
    rinseAfter: label.rinseAfter,
    daysAfterOpening: label.daysAfterOpening === null ? "" : String(label.daysAfterOpening),
    hoursDiluted: label.hoursDiluted === null ? "" : String(label.hoursDiluted),
    known: label.known,
  };
}

export function productFrom(draft: ProductDraft, id: string): FromProductDraft {
  const troubles: Partial<Record<ProductField, ProductTrouble>> = {};
  const whole = (field: ProductField, text: string, most: number): number => {
    const value = readWhole(text);
    if (value === null || value > most) troubles[field] = "notWhole";
    return value ?? 0;
  };
  const orNull = (field: ProductField, text: string, most: number): number | null => {
    if (text.trim() === "") return null;
    const value = whole(field, text, most);
    if (value < 1) troubles[field] = "notWhole";
    return value;
  };
  const name = draft.name.trim();
  if (name === "") troubles.name = "missing";
  const orderBelow = whole("orderBelow", draft.orderBelow, 1_000_000);
  const orderTo = whole("orderTo", draft.orderTo, 1_000_000);
  if (orderTo < orderBelow) troubles.orderTo = "orderTo";

  const isLabelled = hasLabel(draft.kind);
  const times = isLabelled ? draft.times.filter(({ use, contact }) => use.trim() !== "" && contact.trim() !== "") : [];
  const contactTimes = times.map(({ use, contact }) => ({ use: use.trim(), contactS: readSeconds(contact) ?? 0 }));
  if (contactTimes.some(({ contactS }) => contactS < 1 || contactS > 86_400)) troubles.times = "notATime";
  if (new Set(contactTimes.map(({ use }) => use)).size < contactTimes.length) troubles.times = "useTwice";
  if (draft.kind === "disinfectant" && contactTimes.length === 0) troubles.times = "contactNeeded";
  const reapply = draft.reapply.trim() === "" || !isLabelled ? null : readSeconds(draft.reapply);
  if (isLabelled && draft.reapply.trim() !== "" && (reapply === null || reapply < 10 || reapply > 3600))
    troubles.reapply = "notATime";
  const daysAfterOpening = orNull("daysAfterOpening", draft.daysAfterOpening, 3650);
  const hoursDiluted = isLabelled ? orNull("hoursDiluted", draft.hoursDiluted, 8784) : null;
  if (Object.keys(troubles).length > 0) return { ok: false, troubles };

  const { kind, unit, cleanFirst, rinseAfter, known } = draft;
  const facts = {
    contactTimes,
    reapplyWithinS: reapply,
    cleanFirst,
    rinseAfter,
    daysAfterOpening,
    hoursDiluted,
    known,
  };
  // Ink and the like have a time after opening at most.
  const label = isLabelled || daysAfterOpening !== null ? facts : null;
  return { ok: true, product: Product.parse({ id, name, kind, unit, orderBelow, orderTo, label }) };
}
