/** The shelf in English. */
import type { Product } from "../../shelf/product";

const units: Record<Product["unit"], readonly [one: string, many: string]> = {
  piece: ["piece", "pieces"],
  tablet: ["tablet", "tablets"],
  mL: ["mL", "mL"],
  g: ["g", "g"],
};

export const shelfEn = {
  counted: (quantity: number, unit: Product["unit"]) => `${quantity} ${units[unit][quantity === 1 ? 0 : 1]}`,
  noLot: "no lot",
  ofLot: (name: string, lot: string) => `${name}, lot ${lot}`,
  noExpiry: "no expiry known",
  through: (day: string) => `through ${day}`,
  throughOpened: (day: string) => `through ${day} (opened)`,
  noExpiryOf: (name: string) => `${name}: no expiry known`,
  notAfter: (name: string, day: string) => `${name}: not after ${day}`,
  lastDay: (name: string, day: string) => `${name}: last day ${day}`,
  nothingMissing: "Nothing is missing",
  missing: (what: string) => `Missing: ${what}`,
  pastDate: (count: number) => `${count} out of date on the shelf.`,
  noContactTime: (product: string, use: string) => `${product} gives no contact time for ${use}.`,
  tooLongWet: (product: string) => `${product} asks for more than an hour wet; a session cannot watch that.`,
};
