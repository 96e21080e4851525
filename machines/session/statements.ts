/**
 * What each event states. Pure functions from what is so to bare facts, one for each thing a person can report or ask.
 * The chart says when; these say what.
 */
import type { BareFact, DeviationCode, RefusalReason } from "../../src/session/fact";
import { credit, fold, spoilsClock } from "../../src/session/fold";
import type { Effect, Step } from "../../src/session/protocol";
import type { SessionInput } from "../../src/session/sessionInput";
import { isSkin } from "../../src/session/skin";
import { applyEffect, type ItemState, isLeftAlone } from "../../src/session/station";
import { hasLapsed, isFull, leftMs, wantsReapply } from "../../src/session/wetClock";
import {
  flowHere,
  groupHere,
  indexHere,
  kindsIn,
  stepById,
  stepHere,
  stepsHere,
  type World,
} from "../../src/session/world";
import { isOutOfDate, labelOf, lotMeant, productFor } from "./lookUp";
import type { Ms } from "./vocabulary";

export type Told = { readonly input: SessionInput; readonly world: World };

/** Watched time is written down at least this often while a clock counts, so that a kill costs no more. */
export const heartbeatMs: Ms = 10_000;

export const refusal = (request: string, reason: RefusalReason, item: string | null = null): BareFact => ({
  type: "v1.Refused",
  request,
  reason,
  item,
});

/** Folds bare facts to see what would be so; the stamps do not matter for that. */
export const supposing = ({ input, world }: Told, facts: readonly BareFact[]): World =>
  facts.reduce<World>((w, f) => fold(input, w, { ...f, witnessedMs: 0, cause: world.cause + 1 }), world);

/** The steps read together are done: their effects, what was not as it should be, and the clocks they start or end. */
export function stepsDone(told: Told): BareFact[] {
  const facts: BareFact[] = [];
  for (const step of groupHere(told.input, told.world)) {
    const effects = effectsOf({ ...told, world: supposing(told, facts) }, step);
    facts.push({ type: "v1.StepDone", step: step.id }, ...effects);
  }
  return facts;
}

function effectsOf(told: Told, step: Step): BareFact[] {
  const repeats = told.world.flows.length > 0 || told.world.place?.list === "resuming";
  if (!repeats && told.world.done.includes(step.id)) return [];
  let { world } = told;
  const facts: BareFact[] = [];
  for (const effect of step.effects) {
    const stated = effectStated({ input: told.input, world }, effect, step.id);
    facts.push(...stated);
    const { station } = applyEffect(world.station, effect, kindsIn(told.input));
    world = supposing({ input: told.input, world: { ...world, station } }, stated);
  }
  return facts;
}

function effectStated(told: Told, effect: Effect, step: string): BareFact[] {
  const { findings } = applyEffect(told.world.station, effect, kindsIn(told.input));
  const deviations = findings.map((f): BareFact => ({ type: "v1.Deviation", code: f.code, item: f.item, step }));
  if (coversWet(told.world, effect)) {
    deviations.push({ type: "v1.Deviation", code: "coveredUnclean", item: effect.item, step });
  }
  if ("item" in effect && isLeftAlone(told.world.station.items[effect.item], effect)) return [];
  if (effect.verb === "apply") return [...deviations, ...surfaceApplied(told, effect.item, step)];
  if (effect.verb === "wipe") return [...deviations, ...surfaceWiped(told, effect.item, step)];
  if (effect.verb === "open" && isOutOfDate(told, effect.item)) {
    deviations.push({ type: "v1.Deviation", code: "openedOutOfDate", item: effect.item, step });
  }
  if (spoilsClock(told.world, effect)) {
    deviations.push({ type: "v1.Deviation", code: "touchedWithSoiledGloves", item: effect.item, step });
  }
  return deviations;
}

/** A barrier over a surface that is still wet, or not yet wiped, ends its process halfway. */
export const coversWet = (world: World, effect: Effect): effect is Effect & { item: string } =>
  effect.verb === "cover" && world.clocks[effect.item] !== undefined;

/** A product went on: a clock starts, or the one that runs goes on. Out of date, or over dirt, it counts for nothing. */
export function surfaceApplied(told: Told, surface: string, step: string | null = null): BareFact[] {
  const { input, world } = told;
  const product = productFor(input.protocol, surface);
  const label = product === null ? undefined : labelOf(told, product);
  if (product === null || !label) return [refusal("surface.applied", "unknownItem", surface)];
  if (isOutOfDate(told, product)) return [{ type: "v1.Deviation", code: "appliedOutOfDate", item: surface, step }];
  // Skin is no surface: its antiseptic dries as its label says, and no clock counts.
  if (isSkin(kindsIn(input)[surface])) return [];
  const item = world.station.items[surface];
  if (item?.at === "taggedOut") return [refusal("surface.applied", "outOfUse", surface)];
  const clock = world.clocks[surface];
  if (clock && clock.state !== "ready") return [{ type: "v1.WetClockReapplied", surface }];
  if (item && isDirt(item) && !label.oneStep) {
    return [{ type: "v1.Deviation", code: "appliedBeforeCleaning", item: surface, step }];
  }
  return [
    {
      type: "v1.WetClockStarted",
      surface,
      product,
      neededMs: label.contactSec * 1000,
      reapplyWithinMs: label.reapplyWithinSec === null ? null : label.reapplyWithinSec * 1000,
    },
  ];
}

const isDirt = (item: ItemState): boolean => item.condition === "soiled" && !item.preCleaned;

/** Disinfectant does not work through dirt, unless its label cleans in the same step (CDC 2008). */
function wetsDirt(told: Told, effect: Effect): effect is Effect & { item: string } {
  if (effect.verb !== "apply") return false;
  const item = told.world.station.items[effect.item];
  const clock = told.world.clocks[effect.item];
  const runs = clock !== undefined && clock.state !== "ready";
  return item !== undefined && isDirt(item) && !runs && labelOf(told, effect.product)?.oneStep === false;
}

/** Wiped: done if its time is full and attested; otherwise early, kept as what it is. */
export function surfaceWiped({ world }: Told, surface: string, step: string | null = null): BareFact[] {
  const clock = world.clocks[surface];
  if (clock?.state === "ready") return [{ type: "v1.SurfaceWiped", surface }];
  if (clock) {
    return [
      { type: "v1.WipedEarly", surface, shortByMs: leftMs(clock) },
      { type: "v1.Deviation", code: "wipedEarly", item: surface, step },
    ];
  }
  if (world.station.items[surface]?.condition === "clean") return [];
  return [{ type: "v1.Deviation", code: "neverWet", item: surface, step }];
}

/** Surfaces that the steps here would wipe, but that are not ready for it. */
export const notReadyToWipe = ({ input, world }: Told): string[] =>
  groupHere(input, world)
    .filter((step) => world.flows.length > 0 || !world.done.includes(step.id))
    .flatMap((step) => step.effects)
    .filter((e) => e.verb === "wipe" && !isLeftAlone(world.station.items[e.item], e))
    .map((e) => ("item" in e ? e.item : ""))
    .filter((id) => {
      const clock = world.clocks[id];
      return clock ? clock.state !== "ready" : world.station.items[id]?.condition !== "clean";
    });

/** Reads out where the walk stands, and what stands in the way there. */
export function hereEntered(told: Told): BareFact[] {
  const { input, world } = told;
  const step = stepHere(input, world);
  if (!step) return [];
  const index = indexHere(world);
  const list = flowHere(world) ? "flow" : (world.place?.list ?? "setUp");
  const group = list === "flow" ? 1 : groupFrom(told, index);
  return [{ type: "v1.StepEntered", list, step: step.id, index, group }, ...standsInTheWay(told, step)];
}

/** Reads the step before this one again; undoes nothing. */
export function earlierEntered(told: Told): BareFact[] {
  const { input, world } = told;
  const index = indexHere(world) - 1;
  const step = stepsHere(input, world)[index];
  const list = flowHere(world) ? "flow" : (world.place?.list ?? "setUp");
  return step ? [{ type: "v1.StepEntered", list, step: step.id, index, group: 1 }, ...standsInTheWay(told, step)] : [];
}

/** Up to five harmless checks for one answer, when brisk. Hands, gloves, sharps and wetness stand alone. */
function groupFrom({ input, world }: Told, index: number): number {
  if (!world.brisk) return 1;
  const steps = stepsHere(input, world).slice(index, index + 5);
  const harmless = steps.findIndex((s) => s.kind !== "check" || s.effects.length > 0 || !s.skippable);
  return Math.max(1, harmless < 0 ? steps.length : harmless);
}

/**
 * A code was held up: what it says of the item meant here, or why it is not taken. The same code held up again after it
 * was taken states nothing.
 */
export function codeShown(told: Told, { lot, expiry }: { lot: string; expiry: string | null }): BareFact[] {
  const item = lotMeant(told);
  if (item === null) return [];
  const shown: BareFact = { type: "v1.LotShown", item, lot, expiry };
  // Usable through the end of its day. It was shown, and is refused: both are kept.
  const isPast = expiry !== null && told.world.today > expiry;
  return isPast ? [shown, refusal("lot.shown", "outOfDate", item)] : [shown];
}

/** Why a step is not asked for while it would leave this finding behind: what makes it allowed is said with it. */
const reasonAgainst: Partial<Record<DeviationCode, RefusalReason>> = {
  glovesOverUnwashedHands: "handsNotWashed",
  openedWithUnwashedHands: "handsNotWashed",
  touchedWithUnwashedHands: "handsNotWashed",
  skinBrokenWithoutGloves: "handsNotWashed",
  glovesOverGloves: "glovesStillOn",
  washedInGloves: "glovesStillOn",
  touchedWithSoiledGloves: "glovesSoiled",
  openedWithSoiledGloves: "glovesSoiled",
  wipedWithSoiledGloves: "glovesSoiled",
  coveredUnclean: "cleanFirst",
  appliedBeforeCleaning: "cleanFirst",
  broughtBackSoiled: "cleanFirst",
  skinNotPrepared: "skinFirst",
  usedUnsterile: "notNow",
  openedAgain: "notNow",
  usedTaggedOut: "outOfUse",
  sharpNotInSharps: "notNow",
};

/** Whether the companion holds a step back that would leave this finding behind. */
export const isHeldBack = (code: DeviationCode): boolean => reasonAgainst[code] !== undefined;

/**
 * What would be unsafe just now, or is out of date, is not asked for: it is read out with the reason against it. Each
 * reason once a step. A step of a list that was done before does nothing more, so only its hands are looked at.
 */
function standsInTheWay(told: Told, step: Step): BareFact[] {
  const repeats = told.world.flows.length > 0 || told.world.place?.list === "resuming";
  const happens = repeats || !told.world.done.includes(step.id);
  const against = [...againstEffects(told, step), ...notWettedHere(told, step)].filter(
    (f) => happens || !("item" in f) || f.item === null,
  );
  return against.filter((f, i) => against.findIndex((other) => isSameReason(other, f)) === i);
}

/** Soiled by a slip, it has its process later (addedSteps): wetted here, it would count for nothing. */
function notWettedHere({ input }: Told, step: Step): BareFact[] {
  const written = stepById(input, step.id)?.effects ?? [];
  return written.flatMap((e) =>
    e.verb === "apply" && !step.effects.includes(e) ? [refusal("apply", "cleanFirst", e.item)] : [],
  );
}

const isSameReason = (a: BareFact, b: BareFact): boolean =>
  a.type === "v1.Refused" &&
  b.type === "v1.Refused" &&
  a.reason === b.reason &&
  ((a.reason !== "outOfDate" && a.reason !== "outOfUse") || a.item === b.item);

function againstEffects(told: Told, step: Step): BareFact[] {
  let { station } = told.world;
  return step.effects.flatMap((effect): BareFact[] => {
    const before = station;
    // Passed over where it stands; said all the same, so that nobody waits for it.
    if ("item" in effect && effect.verb !== "tagOut" && isLeftAlone(before.items[effect.item], effect)) {
      return [refusal(effect.verb, "outOfUse", effect.item)];
    }
    const outcome = applyEffect(station, effect, kindsIn(told.input));
    station = outcome.station;
    const findings = [...outcome.findings];
    if (coversWet(told.world, effect)) findings.push({ code: "coveredUnclean", item: effect.item });
    if (spoilsClock({ ...told.world, station: before }, effect)) {
      findings.push({ code: "touchedWithSoiledGloves", item: effect.item });
    }
    if (wetsDirt({ ...told, world: { ...told.world, station } }, effect)) {
      findings.push({ code: "appliedBeforeCleaning", item: effect.item });
    }
    const first = findings.find((f) => isHeldBack(f.code));
    const reason = first && reasonAgainst[first.code];
    if (first && reason) return [refusal(effect.verb, reason, first.item)];
    if (effect.verb === "open" && isOutOfDate(told, effect.item)) return [refusal("open", "outOfDate", effect.item)];
    if (effect.verb === "apply" && isOutOfDate(told, effect.product)) {
      return [refusal("apply", "outOfDate", effect.product)];
    }
    return [];
  });
}

/** What the watched time brings: a clock full, lapsed, or due for re-application; else a line now and then. */
export function timePassed(told: Told, pendingMs: Ms): BareFact[] {
  const clocks = Object.values(credit(told.world, pendingMs).clocks);
  const facts = clocks.flatMap((clock): BareFact[] => {
    const { surface, creditedMs, neededMs, sinceAppliedMs, reapplyWithinMs } = clock;
    if (clock.state !== "counting") return [];
    const wetUntilFull = reapplyWithinMs === null || sinceAppliedMs - (creditedMs - neededMs) <= reapplyWithinMs;
    if (isFull(clock) && wetUntilFull) return [{ type: "v1.WetClockTimeUp", surface, creditedMs }];
    if (hasLapsed(clock)) return [{ type: "v1.WetClockLapsed", surface }];
    return wantsReapply(clock) ? [{ type: "v1.ReapplyDue", surface }] : [];
  });
  if (facts.length > 0) return facts;
  const counts = clocks.some((c) => c.state === "counting");
  return counts && pendingMs >= heartbeatMs ? [{ type: "v1.TimeWitnessed" }] : [];
}
