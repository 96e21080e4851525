/** Invented products for tests and demonstrations: no brand, no shop. */
import { Product, type Stock } from "./product";

/** A spray with two contact times and ninety days once opened. */
export const spray = Product.parse({
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
/** Counted by the piece, without a label of its own. */
export const needle = Product.parse({
  id: "needle",
  name: "Needle 7RL",
  kind: "needle",
  unit: "piece",
  label: null,
  orderBelow: 10,
  orderTo: 50,
});
/** A line of the spray, changed as a test needs. */
export const stockLine = (changes: Partial<Stock> = {}): Stock => ({
  id: "s1",
  productId: "spray",
  lot: "L1",
  expiry: "2027-06-30",
  openedOn: null,
  quantity: 1000,
  ...changes,
});
