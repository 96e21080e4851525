/** What must be said with every mix. The first caution, never mix, is in every result there is. */
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
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

export const cautionSources: Readonly<Record<CautionCode, string>> = {
  "never-mix": "CDC household bleach guidance; Stanford EHS bleach page",
  "label-first": "common practice",
  "product-into-water": "MSF",
  "plastic-only": "MSF",
  "cool-water": "MSF",
  "rinse-steel": "MSF",
  "available-chlorine": "from memory",
  "make-up-to": "from memory",
  "not-sporicidal": "Boyce 2018, ICHE",
  flammable: "Boyce 2018, ICHE",
  "outside-60-to-90": "CDC 2008 disinfection guideline (from memory)",
};

const caution = (code: CautionCode, phrases: SumPhrases): Caution => ({
  code,
  words: phrases.mixing.cautions[code],
  source: cautionSources[code],
});

/** Shown before there is any mix to speak of. */
export const neverMix = (phrases: SumPhrases = sumsEn): Caution => caution("never-mix", phrases);

/** Every caution that belongs to this mix, "never mix" first. */
export function cautionsFor(mix: Mix, phrases: SumPhrases = sumsEn): readonly Caution[] {
  const codes: CautionCode[] = ["never-mix", "label-first"];
  if (mix.kind === "alcohol") {
    codes.push("make-up-to", "not-sporicidal", "flammable");
    if (!inBactericidalRange(mix.resulting.amount)) codes.push("outside-60-to-90");
  } else {
    codes.push("product-into-water", "plastic-only", "cool-water", "rinse-steel");
    if (mix.kind === "liquid") codes.push("available-chlorine");
  }
  return codes.map((code) => caution(code, phrases));
}

const plainWater = /^(tap |cold |cool |drinking |distilled |deionised |purified )?water$/i;

/** A mix is the product and water, nothing else: any other companion in the bottle is refused by name. */
export function refuseCompanions(companions: readonly string[]): Answer<null, "never-mix"> {
  const other = companions.find((name) => !plainWater.test(name.trim()));
  if (other === undefined) return answer(null);
  return refuse("never-mix", (say) => say.mixing.refusals.notWith(quoted(other), say.mixing.cautions["never-mix"]));
}
