/**
 * What a cycle must hold, and whose rule it is. EN bands have an upper edge; the CDC minimum exposures have none.
 * A temperature band and an F0 are different questions, and the band is asked first.
 */

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
const cdc = "CDC 2008 disinfection and sterilization guideline, Table 7";

export const bands: readonly Band[] = [
  en("en-121", 121, 3, 15, htm),
  en("en-126", 126, 3, 10, htm),
  en("en-134", 134, 3, 3, htm),
  en("en-134-prion", 134, 3, 18, "prion cycle, United Kingdom practice"),
  en("small-121", 121, 4, 15, small),
  en("small-126", 126, 4, 10, small),
  en("small-134", 134, 4, 3, small),
  exposure("cdc-gravity-121", 121, 30, `${cdc}, gravity, wrapped instruments`),
  exposure("cdc-gravity-132", 132, 15, `${cdc}, gravity, wrapped instruments`),
  exposure("cdc-gravity-textile-121", 121, 30, `${cdc}, gravity, textile packs`),
  exposure("cdc-gravity-textile-132", 132, 25, `${cdc}, gravity, textile packs`),
  exposure("cdc-prevacuum-132", 132, 4, `${cdc}, dynamic air removal, wrapped`),
];

export function bandById(id: string): Band | undefined {
  return bands.find((band) => band.id === id);
}

export function inBand(celsius: number, band: Band): boolean {
  return celsius >= band.lowC && (band.highC === null || celsius <= band.highC);
}

/** "134-137 °C for 3 min" */
export function showBand(band: Band): string {
  const range = band.highC === null ? `${band.lowC} °C or above` : `${band.lowC}-${band.highC} °C`;
  return `${range} for ${band.holdMs / minuteMs} min`;
}

/** The width of the band (3 K or 4 K) differs by standard, so it is part of the rule and not a constant. */
function en(id: string, lowC: number, widthK: number, minutes: number, source: string): Band {
  return { id, lowC, highC: lowC + widthK, holdMs: minutes * minuteMs, source, status: "from memory" };
}

function exposure(id: string, lowC: number, minutes: number, source: string): Band {
  return { id, lowC, highC: null, holdMs: minutes * minuteMs, source, status: "confirmed" };
}
