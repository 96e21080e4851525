/**
 * The rule catalogue: what a protocol may never ask for, in plain words, with its source. A rule is expressed by codes
 * of the station (`codes`) and by a look of the checker's own (src/check/conduct, sharps, closing). Sources marked "from
 * memory" were not read again for this table.
 */
import type { DeviationCode } from "../session/fact";

export const ruleIds = [
  "handsBeforeGloves",
  "glovesAreNotWashed",
  "oneGloveOverAnother",
  "handsAfterGloves",
  "cleanHandsToTouch",
  "soiledGlovesOnClean",
  "freshGlovesForCleanWork",
  "damagedOrSoiledGlovesChanged",
  "glovesForDirtyWork",
  "skinPrepared",
  "packsOpenedClean",
  "sterileOnce",
  "sterileUnderTheSkin",
  "cleanBeforeWet",
  "wetOnTheSurfaceItself",
  "wetBeforeWipe",
  "wipedWithCleanGloves",
  "disinfectedBeforeCovered",
  "coveredOnlyClean",
  "barrierWhereUncovered",
  "bottlesAway",
  "sharpsContainerOnly",
  "oldNeedleFirst",
  "needleInUse",
  "woundCovered",
  "stopMeansStop",
  "sharpsSecured",
  "sharpsFirst",
  "sharpsCounted",
  "wasteStream",
  "bloodiedOut",
  "bagLast",
  "singleUseDiscarded",
  "thrownStaysOut",
  "reusableReady",
  "criticalSterilised",
  "noBarrierLeft",
  "wipedAtTheEnd",
  "outOfUseLeftAlone",
  "handsLast",
] as const;
export type RuleId = (typeof ruleIds)[number];

export interface Rule {
  readonly words: string;
  readonly source: string;
  /** Findings of the station that express the rule. */
  readonly codes: readonly DeviationCode[];
}

const bloodborne = "29 CFR 1910.1030";
const common = "common practice, no source";

export const rules: Readonly<Record<RuleId, Rule>> = {
  handsBeforeGloves: {
    words: "Hands are washed or rubbed before gloves go on.",
    source: "WHO 2009 hand hygiene; CDC glove use",
    codes: ["glovesOverUnwashedHands"],
  },
  glovesAreNotWashed: {
    words: "Gloves come off before hands are washed; gloves are never washed for re-use.",
    source: `${bloodborne}(d)(3)(ix)(B), from memory`,
    codes: ["washedInGloves"],
  },
  oneGloveOverAnother: {
    words: "Used gloves come off before fresh ones go on.",
    source: `${bloodborne}(d)(3)(ix)(A), from memory`,
    codes: ["glovesOverGloves"],
  },
  handsAfterGloves: {
    words: "Hands are washed or rubbed as soon as gloves come off.",
    source: `${bloodborne}(d)(2)(v); WHO 2009`,
    codes: [],
  },
  cleanHandsToTouch: {
    words: "Nothing at the station is touched with unwashed hands.",
    source: "WHO 2009, before contact",
    codes: ["touchedWithUnwashedHands"],
  },
  soiledGlovesOnClean: {
    words: "Soiled gloves touch nothing clean that has no barrier.",
    source: "CDC and WHO 2009 glove use: gloves carry from site to site",
    codes: ["touchedWithSoiledGloves"],
  },
  freshGlovesForCleanWork: {
    words: "Gloves are changed between soiled work and clean work.",
    source: "CDC and WHO 2009 glove use: from a soiled to a clean site",
    codes: [],
  },
  damagedOrSoiledGlovesChanged: {
    words: "Gloves are changed when torn, soiled by what was not planned, or after an accident.",
    source: `CDC and WHO 2009 glove use; ${bloodborne}(d)(3)(ix)(A)`,
    codes: [],
  },
  glovesForDirtyWork: {
    words: "Skin is broken, and used things are handled, with gloves on.",
    source: `${bloodborne}(d)(3)(ix)`,
    codes: ["skinBrokenWithoutGloves"],
  },
  skinPrepared: {
    words: "Antiseptic goes on the skin before the first line.",
    source: common,
    codes: ["skinNotPrepared"],
  },
  packsOpenedClean: {
    words: "Sterile packs are opened with clean gloves or washed hands.",
    source: "Spaulding 1968, critical items; aseptic handling: common practice, no source",
    codes: ["openedWithSoiledGloves", "openedWithUnwashedHands"],
  },
  sterileOnce: {
    words: "A sterile pack is opened once.",
    source: "Spaulding 1968, critical items",
    codes: ["openedAgain"],
  },
  sterileUnderTheSkin: {
    words: "What goes through skin comes sterile, from a pack opened for this client.",
    source: "Spaulding 1968; CDC 2008, Table 1",
    codes: ["usedUnsterile"],
  },
  cleanBeforeWet: {
    words: "A surface is cleaned before disinfectant goes on, unless the label cleans in one step.",
    source: "CDC 2008; WHO 2014 Annex G",
    codes: ["appliedBeforeCleaning"],
  },
  wetOnTheSurfaceItself: {
    words: "Disinfectant goes on the surface, not on the barrier over it.",
    source: "CDC 2008: contact with the surface",
    codes: [],
  },
  wetBeforeWipe: {
    words: "A surface is wet for the whole contact time before it is wiped.",
    source: "CDC 2008; the product's label",
    codes: ["neverWet", "wipedEarly"],
  },
  wipedWithCleanGloves: {
    words: "Disinfected surfaces are wiped with clean gloves.",
    source: "CDC and WHO 2009 glove use",
    codes: ["wipedWithSoiledGloves"],
  },
  disinfectedBeforeCovered: {
    words: "A surface is disinfected before it is covered for the client.",
    source: "NEHA body art model code, 8.1-8.2",
    codes: [],
  },
  coveredOnlyClean: {
    words: "Barriers go over what is clean and dry, with clean hands.",
    source: common,
    codes: ["coveredUnclean"],
  },
  barrierWhereUncovered: {
    words: "What is uncovered after the client was covered for the client.",
    source: "NEHA body art model code, 8.1",
    codes: [],
  },
  bottlesAway: {
    words: "Bottles that were poured from are taken away, clean, before the skin is broken.",
    source: common,
    codes: ["broughtBackSoiled"],
  },
  sharpsContainerOnly: {
    words: "A sharp goes into the sharps container and nowhere else.",
    source: `${bloodborne}(d)(4)(iii)(A)(1)`,
    codes: ["sharpNotInSharps"],
  },
  oldNeedleFirst: {
    words: "The old sharp is put away before a new one is opened.",
    source: `${bloodborne}(d)(4)(iii)(A)(1): as soon as feasible`,
    codes: [],
  },
  needleInUse: {
    words: "Work goes on only with a needle that was opened for it.",
    source: "Spaulding 1968, critical items: single use",
    codes: [],
  },
  woundCovered: {
    words: "The tattoo is covered before the client leaves the station, and before the session closes.",
    source: common,
    codes: [],
  },
  stopMeansStop: {
    words: "When the client stops early, no more is tattooed: the dressing comes next.",
    source: common,
    codes: [],
  },
  sharpsSecured: {
    words: "Sharps are in the container or parked before anyone leaves.",
    source: common,
    codes: [],
  },
  sharpsFirst: {
    words: "When the station comes apart, sharps go first.",
    source: `${bloodborne}(d)(4)(iii)(A)(1): as soon as feasible`,
    codes: [],
  },
  sharpsCounted: {
    words: "Every sharp opened is in the container, and is counted, before the session closes.",
    source: common,
    codes: [],
  },
  wasteStream: {
    words: "Waste that blood may have reached goes into its own stream; the sharps container takes sharps only.",
    source: `${bloodborne}(d)(4)(iii); household bin: common practice, no source`,
    codes: [],
  },
  bloodiedOut: {
    words: "After an accident at work, single-use supplies that met blood are thrown out before the work goes on.",
    source: common,
    codes: [],
  },
  bagLast: {
    words: "The waste bag is closed when the last waste is in it.",
    source: `${bloodborne}(d)(4)(iii)(B), closed before it is moved, from memory; order: ${common}`,
    codes: [],
  },
  singleUseDiscarded: {
    words: "Single-use things are thrown away after the client, used or not, and never put aside for another.",
    source: "common practice, no source; 25 TAC 229.409",
    codes: [],
  },
  thrownStaysOut: {
    words: "What was thrown away is not taken up again.",
    source: "25 TAC 229.409: single use; common practice, no source",
    codes: [],
  },
  reusableReady: {
    words: "Every reusable thing that was soiled is disinfected, reprocessed, or taken out of use by the end.",
    source: "Spaulding 1968; CDC 2008, Table 1; 29 CFR 1910.1030(d)(4)(ii)(A), from memory",
    codes: [],
  },
  criticalSterilised: {
    words: "A critical thing that was used is sterilised or thrown away; wiping does not make it safe.",
    source: "Spaulding 1968; CDC 2008, Table 1",
    codes: [],
  },
  noBarrierLeft: {
    words: "No barrier stays on for the next client.",
    source: "NEHA body art model code, 8.1",
    codes: [],
  },
  wipedAtTheEnd: {
    words: "Every surface that was wetted is wiped or rinsed as its label says before the session closes.",
    source: "the product's label",
    codes: [],
  },
  outOfUseLeftAlone: {
    words: "What was taken out of use is not used again.",
    source: common,
    codes: ["usedTaggedOut"],
  },
  handsLast: {
    words: "Gloves off and hands washed are the last of it.",
    source: `${bloodborne}(d)(2)(v); WHO 2009`,
    codes: [],
  },
};

/** Codes that report what a person did, or is never asked: kept in the record, no fault of a protocol. */
export const slipCodes: readonly DeviationCode[] = [
  "stepLeftOut",
  "problemReported",
  "dropped",
  "touchedUnplanned",
  "barrierTorn",
  "gloveTorn",
  "sharpsMismatch",
  /** These depend on the day, not on the protocol: held back live, each time. */
  "openedOutOfDate",
  "appliedOutOfDate",
];

const byCode = new Map<DeviationCode, RuleId>(
  ruleIds.flatMap((id) => rules[id].codes.map((code) => [code, id] as const)),
);

/** The rule that a finding breaks; null for a slip. */
export const ruleOf = (code: DeviationCode): RuleId | null => byCode.get(code) ?? null;
