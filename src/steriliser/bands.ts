/**
 * What a cycle must hold, and whose rule it is. EN bands have an upper edge; the CDC minimum exposures have none.
 * A temperature band and an F0 are different questions, and the band is asked first.
 */
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { type Table7Row, table7 } from "./cdcTable7";

export type Band = {
  readonly id: string;
  readonly lowC: number;
  /** null: no upper edge in the rule. */
  readonly highC: number | null;
  readonly holdMs: number;
  readonly source: string;
  readonly status: "confirmed" | "from memory";
};

const minuteMs = 60_000;
const htm = "EN 285 / HTM 01-01 Part C 2016";
const small = "EN 13060 small sterilisers";

export const bands: readonly Band[] = [
  en("en-121", 121, 3, 15, htm),
  en("en-126", 126, 3, 10, htm),
  en("en-134", 134, 3, 3, htm),
  en("en-134-prion", 134, 3, 18, "prion cycle, United Kingdom practice"),
  en("small-121", 121, 4, 15, small),
  en("small-126", 126, 4, 10, small),
  en("small-134", 134, 4, 3, small),
  { ...en("bowie-dick", 134, 3, 3.5, "Bowie-Dick test, as a maker's manual states"), status: "confirmed" },
  ...table7.flatMap(exposures),
];

export function bandById(id: string): Band | undefined {
  return bands.find((band) => band.id === id);
}

export function inBand(celsius: number, band: Band): boolean {
  return celsius >= band.lowC && (band.highC === null || celsius <= band.highC);
}

/** "134-137 °C for 3 min" */
export function showBand(band: Band, phrases: SumPhrases = sumsEn): string {
  const say = phrases.steriliser;
  const range = band.highC === null ? say.orAbove(band.lowC) : `${band.lowC}-${band.highC} °C`;
  return say.band(range, band.holdMs / minuteMs);
}

/** The width of the band (3 K or 4 K) differs by standard, so it is part of the rule and not a constant. */
function en(id: string, lowC: number, widthK: number, minutes: number, source: string): Band {
  return { id, lowC, highC: lowC + widthK, holdMs: minutes * minuteMs, source, status: "from memory" };
}

function exposures({ steriliser, item, at121Min, at132Min }: Table7Row): readonly Band[] {
  const row = (lowC: number, minutes: number): Band => ({
    id: `cdc-${steriliser}-${item}-${lowC}`,
    lowC,
    highC: null,
    holdMs: minutes * minuteMs,
    source: `CDC 2008 disinfection and sterilization guideline, Table 7: ${steriliser}, wrapped ${item}`,
    status: "confirmed",
  });
  return [...(at121Min === null ? [] : [row(121, at121Min)]), row(132, at132Min)];
}

/** EN 13060 covers a chamber of up to 60 L that cannot take one module of 300 x 300 x 600 mm; EN 285 the larger. */
export function standardFor(chamber: {
  readonly litres: number;
  readonly takesOneModule: boolean;
}): "EN 13060" | "EN 285" {
  return chamber.litres <= 60 && !chamber.takesOneModule ? "EN 13060" : "EN 285";
}
