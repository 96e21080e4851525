/** Profiles within the United States: the federal lines every state shares, then what each place adds. */
import { placesEn } from "../sums/phrases/enPlaces";
import { confirmed, keep, type PlaceLine, type PlaceProfile, remembered, unknown } from "./line";

const { texts } = placesEn;

const bbp = "OSHA 29 CFR 1910.1030";
const hsc = "California Health & Safety Code 119315";
const tac = "25 Texas Admin. Code";

const federal: readonly PlaceLine[] = [
  confirmed(
    "keep.staff-medical-record",
    keep("staff-medical-record", { years: 30 }, "end of employment"),
    `${bbp} (h)(1)(iv)`,
  ),
  confirmed("keep.training-record", keep("training-record", { years: 3 }), `${bbp} (h)(2)(ii)`),
  confirmed("keep.sharps-injury-log", keep("sharps-injury-log", { years: 5 }, "end of the year"), "29 CFR 1904.33"),
  remembered(
    "sharps.fill",
    { kind: "sharps-fill", share: 0.75 },
    "common maker's line; OSHA says only not to overfill",
  ),
  confirmed("exposure.first-aid", { kind: "words", words: texts.washLightly }, "CDC/NCCC PEP quick guide"),
];

const weekly = confirmed(
  "test.biological",
  { kind: "biological-test", every: { weeks: 1 }, alsoAfter: [] },
  "CDC disinfection and sterilization guideline",
  2008,
);

export const california: PlaceProfile = {
  id: "california",
  name: "California, United States",
  lines: [
    remembered("age.minimum", { kind: "age", minimumYears: 18 }, "California Penal Code 653"),
    confirmed("keep.steriliser-log", keep("steriliser-log", { years: 3 }), `${hsc}(b)(5)`),
    confirmed("keep.biological-test-log", keep("biological-test-log", { years: 3 }), hsc),
    confirmed(
      "keep.health-questionnaire",
      keep("health-questionnaire", { years: 2 }),
      "AB 1168 digest (law before it)",
      2013,
    ),
    confirmed(
      "keep.pre-sterilised-purchase",
      keep("pre-sterilised-purchase", { days: 90 }, "use"),
      "county facility plan",
    ),
    confirmed(
      "test.biological",
      { kind: "biological-test", every: { months: 1 }, alsoAfter: ["installation", "major repair"] },
      `${hsc}(b)(2)`,
    ),
    confirmed("pack.label", { kind: "pack-label", carries: ["date", "initials", "indicator"] }, `${hsc}(a),(b)(3)`),
    ...federal,
  ],
};

export const texas: PlaceProfile = {
  id: "texas",
  name: "Texas, United States",
  lines: [
    confirmed("age.minimum", { kind: "age", minimumYears: 18 }, `${tac} 229.406`),
    confirmed("age.exception", { kind: "words", words: texts.coverOnly }, `${tac} 229.406`),
    unknown("keep.client-record", "commonly quoted as 2 or 3 years; not confirmed"),
    unknown("keep.steriliser-log", "commonly quoted as 2 or 3 years; not confirmed"),
    confirmed("report.infection", { kind: "report", what: texts.infectionReport, workingDays: 5 }, `${tac} 229.410`),
    confirmed(
      "pack.label",
      { kind: "pack-label", carries: ["date", "initials", "indicator"] },
      `${tac} 229.407(d),(e)`,
    ),
    weekly,
    ...federal,
  ],
};

export const newYorkCity: PlaceProfile = {
  id: "new-york-city",
  name: "New York City, United States",
  lines: [
    remembered("age.minimum", { kind: "age", minimumYears: 18 }, "New York Penal Law 260.21"),
    confirmed("keep.client-record", keep("client-record", { years: 2 }), "NYC rules (written consent)"),
    weekly,
    ...federal,
  ],
};

export const madisonCounty: PlaceProfile = {
  id: "madison-county-illinois",
  name: "Madison County, Illinois, United States",
  lines: [
    remembered("age.minimum", { kind: "age", minimumYears: 18 }, "Illinois state law"),
    confirmed("keep.client-record", keep("client-record", { years: 3 }), "Madison County code"),
    confirmed("keep.biological-test-log", keep("biological-test-log", { years: 3 }), "Madison County code"),
    weekly,
    ...federal,
  ],
};
