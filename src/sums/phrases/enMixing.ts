/** Mixing, in English: why a mix is refused, what to measure, what to beware of, what the bottle says. */
import type { CautionCode } from "../../mixing/cautions";

const cautions: Record<CautionCode, string> = {
  "never-mix": "Never mix with acids, ammonia or any other cleaner: toxic gas.",
  "label-first": "The product's own label outranks this sum.",
  "product-into-water": "Add the product to the water, not the water to the product.",
  "plastic-only": "Use a plastic container, not metal.",
  "cool-water": "Use cold or room-temperature water: hot water destroys chlorine.",
  "rinse-steel": "Rinse stainless steel afterwards: chlorine corrodes it.",
  "available-chlorine":
    "The stock strength is read as available chlorine; a label in % sodium hypochlorite by weight is about 0.95 of that.",
  "make-up-to": "Pour the alcohol first, then top up to the line: alcohol and water shrink when mixed.",
  "not-sporicidal": "Alcohol does not kill spores and dries fast.",
  flammable: "Flammable: keep from flame and heat.",
  "outside-60-to-90": "This strength is outside 60 to 90 % by volume, where alcohol works best.",
};

export const mixingEn = {
  cautions,
  refusals: {
    volumeNothing: "The volume must be more than nothing.",
    volumeTooMuch: "The volume is above 1000 litres; check its unit.",
    tabletNothing: "A tablet must hold more than nothing.",
    tabletTooHeavy: "A tablet of more than 1000 g is not a tablet.",
    strengthNothing: "Both strengths must be more than nothing.",
    above100: "No strength can be above 100 %.",
    cannotBeMade: (target: string, stock: string) =>
      `${target} cannot be made from ${stock}: adding water only weakens it.`,
    byVolume: (percent: string) => `${percent} % by volume`,
    strengthUnit: (typed: string) => `${typed} needs one of the units %, ppm, g/L, deg chlorum, % v/v, % w/w, proof.`,
    volumeUnit: (typed: string) => `${typed} needs one of the units mL, cL, dL, L, tsp, tbsp, cup, quart, gallon (US).`,
    beginsWithNumber: (typed: string) => `${typed} must begin with a plain number such as 0.5 or 12.`,
    chlorineUnits: "%, ppm, g/L or deg chlorum",
    doNotMeet: (wanted: string) => `These strengths measure different things; here ${wanted} is needed.`,
    hoursNothing: "The label's hours must be more than nothing.",
    hoursTooMany: "No mix here is kept longer than a year; check the label's hours.",
    notWith: (other: string, never: string) => `Not with ${other}. ${never}`,
    thousandOrOne: (digits: string) => `${digits} can be read as a thousand or as one; write it without the mark.`,
  },
  lines: {
    measured: (stock: string, strength: string) => `measured ${stock}: ${strength}`,
    parts: (water: string) => `1 part stock to ${water} parts water`,
    addedTo: (water: string, stock: string, total: string) =>
      `added to ${water} water: ${stock} stock (${total} in all)`,
    noWater: "the stock is already at this strength: no water",
    madeUpTo: (total: string, stock: string, water: string) => `made up to ${total}: ${stock} stock, ${water} water`,
    madeUp: (measured: string) => `made up to, ${measured}`,
    powder: (grams: string, total: string) => `${grams} g in ${total} water`,
    tablets: (count: string, total: string, exactly: string) =>
      `${count} tablets in ${total} water (exactly ${exactly}, rounded up)`,
    makes: (strength: string) => `makes ${strength}`,
    alcohol: (stock: string, total: string) => `${stock} stock, then water up to ${total}`,
  },
  spoken: {
    liquid: (stock: string, total: string) => `${stock} millilitres of stock, then water up to ${total} millilitres.`,
    powder: (grams: string, total: string) => `${grams} grams in ${total} millilitres.`,
    tablet: (count: string, total: string) =>
      `${count} ${count === "1" ? "tablet" : "tablets"} in ${total} millilitres.`,
    alcohol: (stock: string, total: string) =>
      `${stock} millilitres of alcohol, then water up to ${total} millilitres.`,
    never: "Never mix with anything else.",
  },
  label: {
    made: (when: string, by: string) => `Made ${when} by ${by}`,
    goodUntil: (until: string, whose: string) => `Use before ${until} (${whose})`,
    rules: { label: "label", "24-hours": "24 h" },
    never: "Never mix with acids, ammonia or other cleaners",
    alcohol: (percent: string) => `${percent} percent alcohol by volume`,
    ppm: (amount: string) => `${amount} parts per million`,
    spoken: (name: string, strength: string, until: string) =>
      `${name}, ${strength}. Use before ${until}. Never mix with anything else.`,
  },
};
