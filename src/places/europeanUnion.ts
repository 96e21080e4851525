/** The European Union: what Regulation (EU) 2020/2081 (REACH Annex XVII entry 75) asks of inks. All else is national. */
import { confirmed, type PlaceLine, type PlaceProfile, remembered, unknown } from "./line";

const reach = "Regulation (EU) 2020/2081, REACH Annex XVII entry 75";

export const europeanUnion: PlaceProfile = {
  id: "european-union",
  name: "European Union (inks only; the rest is national)",
  lines: [
    unknown("age.minimum", "national law"),
    unknown("keep.client-record", "national law"),
    unknown("test.biological", "national rules; EN 17169:2020 is voluntary"),
    unknown("waste.infectious", "codes come from the List of Waste, colours from national rules"),
    confirmed(
      "ink.applies",
      say("Applies after 4 January 2022; Pigment Blue 15:3 and Green 7 from 4 January 2023."),
      reach,
      2020,
    ),
    limit("carcinogen", "carcinogen or mutagen: banned from 0.00005 % by weight (0.5 ppm)"),
    limit("reproductive", "reproductive toxicant: banned from 0.001 % by weight (10 ppm)"),
    limit("sensitiser", "skin sensitiser: banned from 0.001 % by weight (10 ppm)"),
    limit(
      "irritant",
      "corrosive, irritant or eye damage: banned from 0.01 % by weight (100 ppm), 0.1 % (1000 ppm) as pH regulator only",
    ),
    remembered(
      "ink.label",
      say(
        'The label says "Mixture for use in tattoos or permanent make-up", the batch, the ingredients and safety instructions.',
      ),
      `${reach}, para 7`,
      2020,
    ),
    remembered(
      "ink.told",
      say("The client is given the label information before; an ink without the statement is not used."),
      `${reach}, paras 7-8`,
      2020,
    ),
  ],
};

function limit(name: string, text: string): PlaceLine {
  return confirmed(`ink.limit-${name}`, say(text), reach, 2020);
}

function say(text: string) {
  return { kind: "words", words: text } as const;
}
