/**
 * Reads an amount as people write it: "0,5 %", "50 000 ppm", "5 percent", "1 Litre". What could be a thousand or one,
 * "1,000" and "1.000", is asked about and never guessed: the two mixes differ a thousandfold.
 */
import { type Answer, answer, quoted, refuse } from "../../../sums/answer";

const units: readonly (readonly [RegExp, string])[] = [
  [/^(per ?cent|pct)$/, "%"],
  [/^(vol\.? ?%|% ?vol\.?|(per ?cent|%) (by )?volume|% ?abv|per ?cent v\/v)$/, "% v/v"],
  [/^((per ?cent|%) (by )?(weight|mass)|per ?cent w\/w)$/, "% w/w"],
  [/^parts per million$/, "ppm"],
  [/^(grams?|g) ?(per|\/) ?(litre|liter|l)$/, "g/L"],
  [/^(milligrams?|mg) ?(per|\/) ?(litre|liter|l)$/, "mg/L"],
  [/^°? ?chlorum$|^° ?chl(\.|orum)?$|^degrees? chl(\.|orum)?$/, "deg chlorum"],
  [/^(millilit(re|er)s?|mls?|cc|ccm)$/, "mL"],
  [/^(centilit(re|er)s?|cls?)$/, "cL"],
  [/^(decilit(re|er)s?|dls?)$/, "dL"],
  [/^(lit(re|er)s?|ltrs?|ls?)$/, "L"],
  [/^quarts?$/, "quart"],
  [/^gallons?$|^gal$/, "gallon"],
  [/^(teaspoons?|tsps?)$/, "tsp"],
  [/^(tablespoons?|tbsps?)$/, "tbsp"],
  [/^cups?$/, "cup"],
  [/^grams?$|^grammes?$/, "g"],
];

/** @returns text for the mixing form, or what cannot be told apart. Anything else it leaves as it was. */
export function forgive(text: string): Answer<string, "thousand-or-one"> {
  const plain = text.normalize("NFKC").replace(/\s+/gu, " ").trim();
  const match = /^(\d[\d .,'/]*)(.*)$/u.exec(plain);
  if (!match) return answer(plain);
  const digits = (match[1] ?? "").trim().replace(/(\d)[ '](?=\d{3}(?!\d))/g, "$1");
  if (/^[1-9]\d{0,2}[.,]\d{3}$/.test(digits))
    return refuse("thousand-or-one", (say) => say.mixing.refusals.thousandOrOne(quoted(digits)));
  const number = digits.replace(/^(\d+),(\d+)$/, "$1.$2").replace(/[.,]$/, "");
  const word = (match[2] ?? "").trim().toLowerCase().replace(/\.$/, "");
  const unit = units.find(([spelling]) => spelling.test(word))?.[1] ?? (match[2] ?? "").trim();
  return answer(unit === "" ? number : `${number} ${unit}`);
}
