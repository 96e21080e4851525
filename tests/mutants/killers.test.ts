/**
 * Each rule of the catalogue is broken by a mutant that was written down beforehand, and none where nothing is broken.
 * Looked for without slips, which is quick; `npm run mutants` asks about every mutant.
 */
import { describe, expect, it } from "vitest";
import { checkProtocol } from "../../src/check/checkProtocol";
import { type RuleId, ruleIds } from "../../src/check/rules";
import { bundledProtocols } from "../../src/session/protocols";
import { conventionBooth } from "../../src/session/protocols/conventionBooth";
import { asRead } from "./judge";
import { laterOperators } from "./laterOperators";
import { operators } from "./operators";
import { secondOperators } from "./secondOperators";
import { walkWhole } from "./wholeStation";

type Killer = readonly [operator: string, what: string, protocol?: string];

const killers: Readonly<Record<RuleId, Killer>> = {
  handsBeforeGloves: ["handHygieneDropped", "setUp.firstHands"],
  glovesAreNotWashed: ["glovesNotTakenOff", "setUp.coveringGlovesOff"],
  oneGloveOverAnother: ["glovesOverGloves", "setUp.coveringGlovesOff"],
  handsAfterGloves: ["handHygieneDropped", "clientLeaves.clientLeavesHands"],
  cleanHandsToTouch: ["glovesNotPutOn", "newNeedle.newNeedleGlovesOn"],
  soiledGlovesOnClean: ["gloveChangeDropped", "breakdown.wipingGlovesOff"],
  freshGlovesForCleanWork: ["gloveChangeDropped", "setUp.coveringGlovesOff"],
  damagedOrSoiledGlovesChanged: ["gloveChangeDropped", "freshGloves.freshGlovesOff"],
  glovesForDirtyWork: ["glovesNotPutOn", "setUp.coveringGlovesOn"],
  skinPrepared: ["guardMayBeLeftOut", "setUp.disinfectSkin"],
  packsOpenedClean: ["gloveChangeDropped", "newNeedle.newNeedleGlovesOff"],
  sterileOnce: ["openedTwice", "setUp.fitSterile: open grip"],
  sterileUnderTheSkin: ["usedUnopened", "setUp.fitSterile: open grip"],
  cleanBeforeWet: ["cleaningForgotten", "setUp.cleanSurfaces: preClean lamp"],
  wetOnTheSurfaceItself: ["barrierLeftOn", "breakdown: lamp"],
  wetBeforeWipe: ["wetForgotten", "setUp.wetSurfaces: apply lamp"],
  wipedWithCleanGloves: ["gloveChangeDropped", "setUp.coveringGlovesOff", "conventionBooth"],
  disinfectedBeforeCovered: ["wipeForgotten", "setUp.wipeSurfaces: wipe lamp"],
  coveredOnlyClean: ["wipeForgotten", "setUp.wipeSurfaces: wipe lamp"],
  barrierWhereUncovered: ["barrierNeverOn", "setUp: secondMachine"],
  bottlesAway: ["bottleStays", "setUp.bottlesAway: takeAway inkBottles"],
  sharpsContainerOnly: ["sharpIntoBag", "setUp.shave: discard razor"],
  oldNeedleFirst: ["sharpForgotten", "newNeedle.newNeedleSharps: discard needle"],
  needleInUse: ["needleReused", "setUp.fitSterile: open needle"],
  woundCovered: ["guardMayBeLeftOut", "clientLeaves.clientLeavesCover"],
  stopMeansStop: ["workGoesOn", "stopEarly"],
  sharpsSecured: ["sharpForgotten", "clientLeaves.clientLeavesSharps: discard needle"],
  sharpsFirst: ["sharpsNeitherBinnedNorCounted", "breakdown"],
  sharpsCounted: ["countDropped", "breakdown.countSharps"],
  wasteStream: ["wasteIntoHouseholdBin", "breakdown.disposablesOut: discard grip"],
  bloodiedOut: ["leftOutAfterAccident", "resuming.resumingBlood: discard cups"],
  bagLast: ["bagOutTooSoon", "breakdown: wasteBag"],
  singleUseDiscarded: ["disposableLeft", "breakdown.disposablesOut: discard grip"],
  thrownStaysOut: ["thrownAndUsedAgain", "breakdown.disposablesOut: cups"],
  reusableReady: ["uncoveredNotDisinfected", "breakdown: lamp"],
  criticalSterilised: ["criticalLeft", "breakdown.tubesToReprocess: discard tube", "autoclavedTubes"],
  noBarrierLeft: ["itemForgotten", "breakdown: lamp"],
  wipedAtTheEnd: ["wipeForgotten", "breakdown.wipeFurniture: wipe lamp"],
  outOfUseLeftAlone: ["usedAfterTagOut", "setUp: lamp", "conventionBooth"],
  handsLast: ["handHygieneDropped", "breakdown.lastHands"],
};

function mutantOf([operator, what, protocol = "cartridgeMachine"]: Killer) {
  const base = bundledProtocols.find((p) => p.id === protocol);
  const mutants = base
    ? [...operators, ...laterOperators, ...secondOperators].find((o) => o.id === operator)?.mutants(base)
    : [];
  const mutant = mutants?.find((m) => m.what === what);
  return mutant ? asRead(mutant.protocol, what) : expect.fail(`${operator} makes no ${what} of ${protocol}.`);
}

describe("a mutant for each rule", () => {
  it.each(ruleIds)("%s", (rule) => {
    const found = checkProtocol(mutantOf(killers[rule]), { slips: false });
    expect(found.verdict === "breach" ? found.breaches.map((b) => b.rule) : found.verdict).toContain(rule);
  });

  it.each(bundledProtocols)("breaks none where nothing is broken: $id", (protocol) => {
    expect(checkProtocol(protocol).verdict).toBe("proved");
  });

  it("nor with the whole station of one followed at once, without slices", () => {
    expect(walkWhole(conventionBooth)).toMatchObject({ isHarmless: true });
  });

  it("whereas a broken one breaks a rule there, too", () => {
    expect(walkWhole(mutantOf(killers.handsLast))).toMatchObject({ isHarmless: false });
  });
});
