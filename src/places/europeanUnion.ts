/** The European Union: what Regulation (EU) 2020/2081 (REACH Annex XVII entry 75) asks of inks. All else is national. */
import { placesEn } from "../sums/phrases/enPlaces";
import { confirmed, type PlaceLine, type PlaceProfile, remembered, unknown } from "./line";

const { texts } = placesEn;

const reach = "Regulation (EU) 2020/2081, REACH Annex XVII entry 75";

export const europeanUnion: PlaceProfile = {
  id: "european-union",
  name: "European Union (inks only; the rest is national)",
  lines: [
    unknown("age.minimum", "national law"),
    unknown("keep.client-record", "national law"),
    unknown("test.biological", "national rules; EN 17169:2020 is voluntary"),
    unknown("waste.infectious", "codes come from the List of Waste, colours from national rules"),
    confirmed("ink.applies", say(texts.inkApplies), reach, 2020),
    limit("carcinogen", texts.inkCarcinogen),
    limit("reproductive", texts.inkReproductive),
    limit("sensitiser", texts.inkSensitiser),
    limit("irritant", texts.inkIrritant),
    remembered("ink.label", say(texts.inkLabel), `${reach}, para 7`, 2020),
    remembered("ink.told", say(texts.inkTold), `${reach}, paras 7-8`, 2020),
  ],
};

function limit(name: string, text: string): PlaceLine {
  return confirmed(`ink.limit-${name}`, say(text), reach, 2020);
}

function say(text: string) {
  return { kind: "words", words: text } as const;
}
