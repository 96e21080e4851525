/** The shelf in Spanish. */
import type { SumPhrases } from ".";

const units = {
  piece: ["pieza", "piezas"],
  tablet: ["pastilla", "pastillas"],
  mL: ["mL", "mL"],
  g: ["g", "g"],
} as const;

export const shelfEs: SumPhrases["shelf"] = {
  counted: (quantity, unit) => `${quantity} ${units[unit][quantity === 1 ? 0 : 1]}`,
  noLot: "sin lote",
  ofLot: (name, lot) => `${name}, lote ${lot}`,
  noExpiry: "caducidad desconocida",
  through: (day) => `hasta el ${day}`,
  throughOpened: (day) => `hasta el ${day} (abierto)`,
  noExpiryOf: (name) => `${name}: caducidad desconocida`,
  notAfter: (name, day) => `${name}: no después del ${day}`,
  lastDay: (name, day) => `${name}: último día, ${day}`,
  nothingMissing: "No falta nada",
  missing: (what) => `Falta: ${what}`,
  pastDate: (count) => `${count} fuera de fecha en el estante.`,
  noContactTime: (product, use) => `${product} no da tiempo de contacto para ${use}.`,
  tooLongWet: (product) => `${product} pide más de una hora mojado; una sesión no puede vigilar eso.`,
};
