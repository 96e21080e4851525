/** Reads what a person types on the mixing form: "5 %", "1000 ppm", "12 deg chlorum", "70 % v/v", "500 mL". */
import { answer, quoted, refuse } from "../sums/answer";
import { parseRatio, type Ratio, ratio } from "../sums/ratio";
import type { MixAnswer } from "./refusals";
import { type Strength, type StrengthUnit, strength, type Volume } from "./units";

/** What a bare "%" means depends on what is in the bottle: on a bleach, a powder or an alcohol it is not the same thing. */
export type PercentMeans = "percent" | "percentMass" | "percentVolume";

const strengthUnits: Record<string, StrengthUnit> = {
  ppm: "ppm",
  "mg/l": "ppm",
  "g/l": "gramsPerLitre",
  "deg chlorum": "degreesChlorum",
  "degrees chlorum": "degreesChlorum",
  "degree chlorum": "degreesChlorum",
  "°chl": "degreesChlorum",
  chlorum: "degreesChlorum",
  "% v/v": "percentVolume",
  "%v/v": "percentVolume",
  "% vol": "percentVolume",
  "%vol": "percentVolume",
  "% abv": "percentVolume",
  "%abv": "percentVolume",
  "% w/v": "percent",
  "%w/v": "percent",
  "% w/w": "percentMass",
  "%w/w": "percentMass",
  proof: "proof",
};

/** US measures by definition: 1 gallon = 231 cubic inches = 3785.411784 mL (NIST Handbook 44, App. C). */
const gallon = ratio(3_785_411_784n, 1_000_000n);
const volumeUnits: Record<string, Ratio> = {
  ml: ratio(1),
  cl: ratio(10),
  dl: ratio(100),
  l: ratio(1000),
  litre: ratio(1000),
  litres: ratio(1000),
  liter: ratio(1000),
  liters: ratio(1000),
  tsp: gallon.div(768),
  tbsp: gallon.div(256),
  cup: gallon.div(16),
  quart: gallon.div(4),
  gallon,
};

/** @param percentMeans how to read a "%" with nothing after it. */
export function readStrength(text: string, percentMeans: PercentMeans): MixAnswer<Strength> {
  const split = splitUnit(text);
  if (!split.ok) return split;
  const { amount, unit: word } = split.value;
  const unit = word === "%" ? percentMeans : own(strengthUnits, word);
  if (unit === undefined) return refuse("unknown-unit", (say) => say.mixing.refusals.strengthUnit(quoted(text)));
  return answer(strength(unit, amount));
}

export function readVolume(text: string): MixAnswer<Volume> {
  const split = splitUnit(text);
  if (!split.ok) return split;
  const perUnit = own(volumeUnits, split.value.unit);
  if (perUnit === undefined) return refuse("unknown-unit", (say) => say.mixing.refusals.volumeUnit(quoted(text)));
  return answer({ ml: split.value.amount.mul(perUnit) });
}

function splitUnit(text: string): MixAnswer<{ amount: Ratio; unit: string }> {
  const match = /^\s*([\d./]{1,40})\s*(\S.{0,30})?$/su.exec(text);
  if (!match) return refuse("not-a-number", (say) => say.mixing.refusals.beginsWithNumber(quoted(text)));
  const amount = parseRatio(match[1] ?? "");
  if (!amount.ok) return amount;
  const unit = (match[2] ?? "").trim().toLowerCase().replace(/\s+/g, " ");
  return answer({ amount: amount.value, unit });
}

function own<T>(table: Record<string, T>, key: string): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}
