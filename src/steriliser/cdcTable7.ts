/**
 * CDC 2008 disinfection and sterilization guideline, Table 7: minimum exposure and drying times for steam. The table
 * rounds 250 °F and 270 °F to 121 °C and 132 °C; null where it says "not applicable".
 */

export type Table7Row = {
  readonly steriliser: "gravity" | "prevacuum";
  readonly item: "instruments" | "textiles" | "utensils";
  readonly at121Min: number | null;
  readonly at132Min: number;
  readonly dryingMin: readonly [number, number];
};

export const table7: readonly Table7Row[] = [
  { steriliser: "gravity", item: "instruments", at121Min: 30, at132Min: 15, dryingMin: [15, 30] },
  { steriliser: "gravity", item: "textiles", at121Min: 30, at132Min: 25, dryingMin: [15, 15] },
  { steriliser: "gravity", item: "utensils", at121Min: 30, at132Min: 15, dryingMin: [15, 30] },
  { steriliser: "prevacuum", item: "instruments", at121Min: null, at132Min: 4, dryingMin: [20, 30] },
  { steriliser: "prevacuum", item: "textiles", at121Min: null, at132Min: 4, dryingMin: [5, 20] },
  { steriliser: "prevacuum", item: "utensils", at121Min: null, at132Min: 4, dryingMin: [20, 20] },
];
