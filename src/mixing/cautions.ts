/** What must be said with every mix. The first caution, never mix, is in every result there is. */
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import { inBactericidalRange } from "./alcohol";
import type { Mix } from "./mix";

export type CautionCode =
  | "never-mix"
  | "label-first"
  | "product-into-water"
  | "plastic-only"
  | "cool-water"
  | "rinse-steel"
  | "available-chlorine"
  | "make-up-to"
  | "not-sporicidal"
  | "flammable"
  | "outside-60-to-90";

export type Caution = { readonly code: CautionCode; readonly words: string; readonly source: string };

const cautions: Record<CautionCode, Omit<Caution, "code">> = {
  "never-mix": {
    words: "Never mix with acids, ammonia or any other cleaner: toxic gas.",
    source: "CDC household bleach guidance; Stanford EHS bleach page",
  },
  "label-first": { words: "The product's own label outranks this sum.", source: "common practice" },
  "product-into-water": { words: "Add the product to the water, not the water to the product.", source: "MSF" },
  "plastic-only": { words: "Use a plastic container, not metal.", source: "MSF" },
  "cool-water": { words: "Use cold or room-temperature water: hot water destroys chlorine.", source: "MSF" },
  "rinse-steel": { words: "Rinse stainless steel afterwards: chlorine corrodes it.", source: "MSF" },
  "available-chlorine": {
    words:
      "The stock strength is read as available chlorine; a label in % sodium hypochlorite by weight is about 0.95 of that.",
    source: "from memory",
  },
  "make-up-to": {
    words: "Pour the alcohol first, then top up to the line: alcohol and water shrink when mixed.",
    source: "from memory",
  },
  "not-sporicidal": { words: "Alcohol does not kill spores and dries fast.", source: "Boyce 2018, ICHE" },
  flammable: { words: "Flammable: keep from flame and heat.", source: "Boyce 2018, ICHE" },
  "outside-60-to-90": {
    words: "This strength is outside 60 to 90 % by volume, where alcohol works best.",
    source: "CDC 2008 disinfection guideline (from memory)",
  },
};

/** Shown before there is any mix to speak of. */
export const neverMix: Caution = { code: "never-mix", ...cautions["never-mix"] };

/** Every caution that belongs to this mix, "never mix" first. */
export function cautionsFor(mix: Mix): readonly Caution[] {
  const codes: CautionCode[] = ["never-mix", "label-first"];
  if (mix.kind === "alcohol") {
    codes.push("make-up-to", "not-sporicidal", "flammable");
    if (!inBactericidalRange(mix.resulting.amount)) codes.push("outside-60-to-90");
  } else {
    codes.push("product-into-water", "plastic-only", "cool-water", "rinse-steel");
    if (mix.kind === "liquid") codes.push("available-chlorine");
  }
  return codes.map((code) => ({ code, ...cautions[code] }));
}

const plainWater = /^(tap |cold |cool |drinking |distilled |deionised |purified )?water$/i;

/** A mix is the product and water, nothing else: any other companion in the bottle is refused by name. */
export function refuseCompanions(companions: readonly string[]): Answer<null, "never-mix"> {
  const other = companions.find((name) => !plainWater.test(name.trim()));
  if (other === undefined) return answer(null);
  return refuse("never-mix", `Not with ${quoted(other)}. ${cautions["never-mix"].words}`);
}
