/**
 * How long hands are washed or rubbed, and who says so. The sources differ for washing; forty seconds meets them all.
 */

export type HandMethod = "wash" | "rub";

export type PublishedDuration = {
  readonly method: HandMethod;
  readonly leastMs: number;
  /** null where the source gives no upper end. */
  readonly mostMs: number | null;
  readonly source: string;
  readonly status: "confirmed" | "from memory";
};

export const publishedDurations: readonly PublishedDuration[] = [
  { method: "wash", leastMs: 40_000, mostMs: 60_000, source: "WHO 2009, whole procedure", status: "confirmed" },
  { method: "wash", leastMs: 20_000, mostMs: null, source: "CDC, community scrubbing time", status: "confirmed" },
  { method: "wash", leastMs: 15_000, mostMs: null, source: "older minimum", status: "confirmed" },
  { method: "rub", leastMs: 20_000, mostMs: 30_000, source: "WHO 2009, whole procedure", status: "from memory" },
  { method: "rub", leastMs: 30_000, mostMs: 60_000, source: "EN 1500 test range", status: "confirmed" },
];

/** What the timer asks for: the least time that meets every source read. */
export const neededMs: Readonly<Record<HandMethod, number>> = { wash: 40_000, rub: 30_000 };

/** Rubs clean hands only: what is visibly soiled is washed (CDC; WHO 2009). */
export function methodFor(hands: { readonly visiblySoiled: boolean }): HandMethod {
  return hands.visiblySoiled ? "wash" : "rub";
}

/** A hand sanitiser needs at least 60 % alcohol (CDC). */
export function sanitiserStrongEnough(percentAlcohol: number): boolean {
  return percentAlcohol >= 60;
}
