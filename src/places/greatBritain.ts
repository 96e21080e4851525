/** Great Britain. Waste colours are England's HTM 07-01 scheme; regional rules vary, and the contractor decides. */
import { placesEn } from "../sums/phrases/enPlaces";
import { confirmed, keep, type PlaceLine, type PlaceProfile, remembered, unknown } from "./line";

const { texts } = placesEn;

const htm = "HTM 07-01, as summarised by waste contractors";

export const greatBritain: PlaceProfile = {
  id: "great-britain",
  name: "Great Britain",
  lines: [
    confirmed("age.minimum", { kind: "age", minimumYears: 18 }, "Tattooing of Minors Act 1969 (c. 24)", 1969),
    remembered("age.leap-day", say(texts.leapDay), "UK leap rule"),
    unknown("keep.client-record", "CIEH/PHE/HSL/TPIU toolkit 2013: length not confirmed; ask the local authority"),
    remembered("keep.hazardous-waste-note", keep("hazardous-waste-note", { years: 3 }), "UK waste regulations"),
    remembered("keep.waste-transfer-note", keep("waste-transfer-note", { years: 2 }), "UK waste regulations"),
    unknown("test.biological", "no frequency confirmed for studios; the maker's instructions and HTM 01-01 govern"),
    remembered("sharps.fill", { kind: "sharps-fill", share: 0.75 }, "HTM 07-01 / RCN practice"),
    remembered("sharps.months-in-use", say(texts.sharpsMonths), "HTM 07-01 / RCN practice"),
    confirmed("exposure.first-aid", say(texts.letBleed), "HSE, blood-borne viruses"),
    confirmed("exposure.sharp", say(texts.sharpNotKept), "HSE, blood-borne viruses"),
    ...wasteStreams(),
  ],
};

/** Deciding factor between orange and yellow is the presence of medicines or chemicals; sources differ on sharps lids. */
function wasteStreams(): PlaceLine[] {
  return [
    confirmed(
      "waste.infectious",
      waste(texts.infectious, texts.orange, "18 01 03*", texts.treatmentOrIncineration),
      htm,
    ),
    confirmed(
      "waste.infectious-chemical",
      waste(texts.infectiousChemical, texts.yellow, "18 01 03*", texts.incineration),
      htm,
    ),
    confirmed("waste.cytotoxic", waste(texts.cytotoxic, texts.purple, "18 01 08*", texts.incineration), htm),
    confirmed("waste.offensive", waste(texts.offensive, texts.yellowBlack, "20 01 99", texts.landfill), htm),
    confirmed("waste.pharmaceutical", waste(texts.pharmaceutical, texts.blueLid, "18 01 09", texts.incineration), htm),
    remembered("waste.domestic", waste(texts.domestic, texts.black, "20 03 01", texts.municipal), htm),
    remembered(
      "waste.tattoo-sharps",
      waste(texts.tattooSharps, texts.orangeOrYellowLid, "18 01 03*", texts.askContractor),
      "contractors' practice",
    ),
  ];
}

function waste(stream: string, colour: string, code: string, route: string) {
  return { kind: "waste", stream, colour, code, route } as const;
}

function say(text: string) {
  return { kind: "words", words: text } as const;
}
