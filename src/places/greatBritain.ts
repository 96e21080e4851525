/** Great Britain. Waste colours are England's HTM 07-01 scheme; regional rules vary, and the contractor decides. */
import { confirmed, keep, type PlaceLine, type PlaceProfile, remembered, unknown } from "./line";

const htm = "HTM 07-01, as summarised by waste contractors";

export const greatBritain: PlaceProfile = {
  id: "great-britain",
  name: "Great Britain",
  lines: [
    confirmed("age.minimum", { kind: "age", minimumYears: 18 }, "Tattooing of Minors Act 1969 (c. 24)", 1969),
    remembered("age.leap-day", say("Born 29 February: of age on 1 March in a year without one."), "UK leap rule"),
    unknown("keep.client-record", "CIEH/PHE/HSL/TPIU toolkit 2013: length not confirmed; ask the local authority"),
    remembered("keep.hazardous-waste-note", keep("hazardous-waste-note", { years: 3 }), "UK waste regulations"),
    remembered("keep.waste-transfer-note", keep("waste-transfer-note", { years: 2 }), "UK waste regulations"),
    unknown("test.biological", "no frequency confirmed for studios; the maker's instructions and HTM 01-01 govern"),
    remembered("sharps.fill", { kind: "sharps-fill", share: 0.75 }, "HTM 07-01 / RCN practice"),
    remembered(
      "sharps.months-in-use",
      say("Replace a sharps container after 3 months in use."),
      "HTM 07-01 / RCN practice",
    ),
    confirmed(
      "exposure.first-aid",
      say("Gently encourage the wound to bleed; do not scrub or suck; soap and water."),
      "HSE, blood-borne viruses",
    ),
    confirmed(
      "exposure.sharp",
      say("The sharp need not be kept for testing; dispose of it without re-sheathing."),
      "HSE, blood-borne viruses",
    ),
    ...wasteStreams(),
  ],
};

/** Deciding factor between orange and yellow is the presence of medicines or chemicals; sources differ on sharps lids. */
function wasteStreams(): PlaceLine[] {
  return [
    confirmed(
      "waste.infectious",
      waste("infectious, no medicines or chemicals", "orange", "18 01 03*", "alternative treatment or incineration"),
      htm,
    ),
    confirmed(
      "waste.infectious-chemical",
      waste("infectious with medicines or chemicals", "yellow", "18 01 03*", "incineration"),
      htm,
    ),
    confirmed("waste.cytotoxic", waste("cytotoxic or cytostatic", "purple", "18 01 08*", "incineration"), htm),
    confirmed(
      "waste.offensive",
      waste("offensive, not infectious", "yellow with black stripe", "20 01 99", "landfill or energy from waste"),
      htm,
    ),
    confirmed(
      "waste.pharmaceutical",
      waste("pharmaceutical, not cytotoxic", "blue lid", "18 01 09", "incineration"),
      htm,
    ),
    remembered("waste.domestic", waste("domestic", "black", "20 03 01", "municipal"), htm),
    remembered(
      "waste.tattoo-sharps",
      waste(
        "infectious sharps from a studio",
        "orange or yellow lid",
        "18 01 03*",
        "confirm with the waste contractor",
      ),
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
