/** The rules of the places in English. A bundled line without a figure of its own says a sentence of these. */
import type { LineValue } from "../../places/line";

/** Kept in a line as it stands here, so that a record reads it; shown in the language of the screen. */
const texts = {
  leapDay: "Born 29 February: of age on 1 March in a year without one.",
  sharpsMonths: "Replace a sharps container after 3 months in use.",
  letBleed: "Gently encourage the wound to bleed; do not scrub or suck; soap and water.",
  sharpNotKept: "The sharp need not be kept for testing; dispose of it without re-sheathing.",
  washLightly: "Wash lightly with soap and water; flush splashes.",
  coverOnly: "A minor only to cover an existing tattoo, with parental consent.",
  infectionReport: "infection or allergic reaction, in writing to the department",
  inkApplies: "Applies after 4 January 2022; Pigment Blue 15:3 and Green 7 from 4 January 2023.",
  inkCarcinogen: "carcinogen or mutagen: banned from 0.00005 % by weight (0.5 ppm)",
  inkReproductive: "reproductive toxicant: banned from 0.001 % by weight (10 ppm)",
  inkSensitiser: "skin sensitiser: banned from 0.001 % by weight (10 ppm)",
  inkIrritant:
    "corrosive, irritant or eye damage: banned from 0.01 % by weight (100 ppm), 0.1 % (1000 ppm) as pH regulator only",
  inkLabel:
    'The label says "Mixture for use in tattoos or permanent make-up", the batch, the ingredients and safety instructions.',
  inkTold: "The client is given the label information before; an ink without the statement is not used.",
  infectious: "infectious, no medicines or chemicals",
  infectiousChemical: "infectious with medicines or chemicals",
  cytotoxic: "cytotoxic or cytostatic",
  offensive: "offensive, not infectious",
  pharmaceutical: "pharmaceutical, not cytotoxic",
  domestic: "domestic",
  tattooSharps: "infectious sharps from a studio",
  orange: "orange",
  yellow: "yellow",
  purple: "purple",
  yellowBlack: "yellow with black stripe",
  blueLid: "blue lid",
  black: "black",
  orangeOrYellowLid: "orange or yellow lid",
  treatmentOrIncineration: "alternative treatment or incineration",
  incineration: "incineration",
  landfill: "landfill or energy from waste",
  municipal: "municipal",
  askContractor: "confirm with the waste contractor",
};

/** Where a line comes from, where that is no citation. */
const sources = {
  commonRule: "common rule; look up your own",
  lookUp: "look up your own",
  nationalLaw: "national law",
  nationalRules: "national rules; EN 17169:2020 is voluntary",
  listOfWaste: "codes come from the List of Waste, colours from national rules",
  coloursDiffer: "colours and codes differ by country; ask the waste contractor",
  makersLine: "common maker's line",
  makersLineOsha: "common maker's line; OSHA says only not to overfill",
  contractorsPractice: "contractors' practice",
  quotedTwoOrThree: "commonly quoted as 2 or 3 years; not confirmed",
  noFrequency: "no frequency confirmed for studios; the maker's instructions and HTM 01-01 govern",
  lengthUnknown: "CIEH/PHE/HSL/TPIU toolkit 2013: length not confirmed; ask the local authority",
  leapRule: "UK leap rule",
  ukWaste: "UK waste regulations",
  countyPlan: "county facility plan",
};

const names: Record<PlaceId, string> = {
  "great-britain": "Great Britain",
  "european-union": "European Union (inks only; the rest is national)",
  california: "California, United States",
  texas: "Texas, United States",
  "new-york-city": "New York City, United States",
  "madison-county-illinois": "Madison County, Illinois, United States",
  elsewhere: "Elsewhere: our own rules",
};

/** What the lines without a value are about. */
const subjects: Record<SubjectId, string> = {
  "age.minimum": "age: minimum",
  "keep.client-record": "how long to keep: client record",
  "keep.steriliser-log": "how long to keep: steriliser log",
  "test.biological": "test: biological",
  "waste.infectious": "waste: infectious",
};

type Carried = Extract<LineValue, { kind: "pack-label" }>["carries"][number];
const carried: Record<Carried, string> = { date: "date", initials: "initials", indicator: "indicator" };
type After = Extract<LineValue, { kind: "biological-test" }>["alsoAfter"][number];
const after: Record<After, string> = { installation: "installation", "major repair": "major repair" };

export type PlaceId =
  | "great-britain"
  | "european-union"
  | "california"
  | "texas"
  | "new-york-city"
  | "madison-county-illinois"
  | "elsewhere";
export type SubjectId =
  | "age.minimum"
  | "keep.client-record"
  | "keep.steriliser-log"
  | "test.biological"
  | "waste.infectious";
export type PlaceTextId = keyof typeof texts;
export type PlaceSourceId = keyof typeof sources;

export const placesEn = {
  texts,
  sources,
  names,
  subjects,
  carried,
  after,
  caution: "A list of what we read, not legal advice. Local law, the label and a clinician outrank it.",
  toFillIn: (subject: string) => `${subject}: not known here; look it up and fill it in`,
  age: (years: number) => `at least ${years} years old`,
  keep: (what: string, span: string, from: string) => `keep the ${what} ${span} from ${from}`,
  test: (span: string) => `biological test at least every ${span}`,
  alsoAfter: (event: string) => `after ${event}`,
  report: (what: string, days: number) => `report ${what} within ${days} working days`,
  packCarries: (what: string) => `each pack carries ${what}`,
  sharpsFill: (percent: number) => `close a sharps container at ${percent} % full`,
  undated: "undated",
};
