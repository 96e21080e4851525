/**
 * One effect judged: the hands, one thing, and what would be wrong. The station's own rule moves both (applyEffect, the
 * very function of the live session); what is added here is what only a whole procedure can show. The checker and its
 * replay on the real chart judge by this one function.
 */
import type { Effect, Item, Label } from "../session/protocol";
import { isOpenWound, isSkin, broken as skinBrokenBy } from "../session/skin";
import {
  applyEffect,
  disinfected,
  type Hands,
  type ItemState,
  isGloved,
  isLeftAlone,
  type Station,
} from "../session/station";
import { skinRules } from "../session/transfer";
import { type RuleId, ruleOf } from "./rules";

/** Where a chain of touches began; the rules look no further. */
export type Origin = "none" | "client" | "other";
const origins: Readonly<Record<Origin, readonly string[]>> = { none: [], client: ["client"], other: ["other"] };
export const originOf = (links: readonly string[]): Origin =>
  links[0] === undefined ? "none" : links[0] === "client" ? "client" : "other";

export interface HandState {
  readonly hands: Hands;
  readonly soiledBy: Origin;
  /** These gloves have done soiled work: cleaning, waste, used barriers. */
  readonly worked: boolean;
  /**
   * Gloves: to be changed before they touch anything; torn, or after what was not planned. Hands: washed a while ago and
   * used since, so to be washed again before gloves.
   */
  readonly due: "nothing" | "gloves" | "hands";
}

/** `wet` until its time is full and attested; then `done`, until it is wiped. */
export type Wetness = "none" | "wet" | "done";

export interface ThingState {
  readonly condition: ItemState["condition"];
  readonly barrier: ItemState["barrier"];
  readonly at: ItemState["at"];
  readonly preCleaned: boolean;
  readonly opened: boolean;
  readonly soiledBy: Origin;
  readonly wetness: Wetness;
  /** What the step has begun for its clock; it takes hold when the step is over. */
  readonly pending: "none" | "wetted" | "wiped";
  /** Disinfected in this session. */
  readonly treated: boolean;
  /** A bottle that was poured from and still stands there. */
  readonly poured: boolean;
  /** Its barrier came off, and it was not covered since. */
  readonly bared: boolean;
  /** It lay there with blood on it when an accident came. */
  readonly spilt: boolean;
}

export const handsAtStart: HandState = { hands: "bare", soiledBy: "none", worked: false, due: "nothing" };

export const thingAtStart = (item: Item): ThingState => ({
  condition: item.starts.condition,
  barrier: item.starts.barrier,
  at: item.starts.at,
  preCleaned: false,
  opened: false,
  soiledBy: "none",
  wetness: "none",
  pending: "none",
  treated: false,
  poured: false,
  bared: false,
  spilt: false,
});

/** Past the set-up, what lay at the station counts as used; in the breakdown it is taken apart. */
export type Stage = "setUp" | "late" | "breakdown";
export const stages: readonly Stage[] = ["setUp", "late", "breakdown"];

/** The facts about a thing that its rules ask for. */
export interface Thing {
  readonly item: Item;
  /** Of the product that the protocol puts on it; null where it puts none. */
  readonly label: Label | null;
}

export interface Judged {
  readonly hands: HandState;
  readonly thing: ThingState;
  readonly broken: readonly RuleId[];
  /** The step cannot be passed yet: its surface is still wet. */
  readonly waits: boolean;
}

type HandVerb = "wash" | "rub" | "don" | "doff";
export type HandEffect = Extract<Effect, { verb: HandVerb }>;
export type ThingEffect = Exclude<Effect, HandEffect>;
export const isOnThing = (effect: Effect): effect is ThingEffect => "item" in effect;

const stationOf = (h: HandState, items: Station["items"]): Station => ({
  hands: h.hands,
  handsSoiledBy: origins[h.soiledBy],
  items,
});

export function judgeHands(before: HandState, effect: HandEffect): { hands: HandState; broken: readonly RuleId[] } {
  const { station, findings } = applyEffect(stationOf(before, {}), effect, {});
  const { verb } = effect;
  const changed = verb === "don" || verb === "doff";
  const settles = before.due === "gloves" ? verb === "don" : verb === "wash" || verb === "rub";
  const broken = findings.flatMap((f) => ruleOf(f.code) ?? []);
  const isStale = verb === "don" && before.due === "hands" && broken.length === 0;
  return {
    hands: {
      hands: station.hands,
      soiledBy: originOf(station.handsSoiledBy),
      worked: before.worked && !changed,
      due: settles ? "nothing" : before.due,
    },
    broken: isStale ? ["handsBeforeGloves"] : broken,
  };
}

const clean: ReadonlySet<Effect["verb"]> = new Set(["wipe", "rinse", "cover", "bring", "open"]);
const dirty: ReadonlySet<Effect["verb"]> = new Set([
  "wipe",
  "rinse",
  "apply",
  "preClean",
  "uncover",
  "discard",
  "fill",
  "breakSkin",
]);
/** On skin goes another piece: a wrap stands for as many as are needed. */
const takesUp: ReadonlySet<Effect["verb"]> = new Set(["touch", "cover", "fill", "preClean", "apply", "wipe"]);
const soils: ReadonlySet<Effect["verb"]> = new Set(["preClean", "uncover", "discard", "fill", "breakSkin"]);
const contacts: ReadonlySet<Effect["verb"]> = new Set(["touch", "cover", "uncover", "bring", "fill", "breakSkin"]);

/**
 * @returns the hands and the thing after the effect, and every rule that it breaks
 */
export function judgeThing(h: HandState, state: ThingState, effect: ThingEffect, about: Thing, stage: Stage): Judged {
  const { item } = about;
  if (isLeftAlone(state, effect)) return { hands: h, thing: state, broken: [], waits: false };
  const live: ItemState = { ...state, soiledBy: origins[state.soiledBy] };
  const outcome = applyEffect(stationOf(h, { [item.id]: live }), effect, { [item.id]: item });
  const after = outcome.station.items[item.id] ?? live;
  const broken = new Set<RuleId>(outcome.findings.flatMap((f) => ruleOf(f.code) ?? []));
  for (const rule of ownLooks(h, state, effect, about, stage)) broken.add(rule);
  const hands = outcome.station.hands;
  const needsWait = effect.verb === "wipe" && state.wetness === "wet";
  return {
    hands: {
      hands,
      soiledBy: originOf(outcome.station.handsSoiledBy),
      worked: isGloved(hands) && (h.worked || soils.has(effect.verb)),
      due: h.due,
    },
    thing: {
      condition: after.condition,
      barrier: after.barrier,
      at: after.at,
      preCleaned: after.preCleaned,
      opened: after.opened,
      soiledBy: originOf(after.soiledBy),
      wetness: effect.verb === "preClean" || effect.verb === "tagOut" ? "none" : state.wetness,
      // Skin is under no clock.
      pending: effect.verb === "apply" && !isSkin(item) ? "wetted" : effect.verb === "wipe" ? "wiped" : state.pending,
      treated: state.treated && after.condition !== "soiled",
      poured: pouredAfter(state, effect, item),
      spilt: state.spilt && effect.verb !== "discard",
      bared: effect.verb === "uncover" || (state.bared && effect.verb !== "cover"),
    },
    broken: [...broken],
    waits: needsWait,
  };
}

const pouredAfter = (state: ThingState, { verb }: ThingEffect, item: Item): boolean => {
  if (item.role !== "bottle" || verb === "takeAway" || verb === "cover") return false;
  return state.poured || verb === "touch" || verb === "bring";
};

/** What the station alone does not find: it needs the whole procedure, or the clock. */
function ownLooks(h: HandState, state: ThingState, effect: ThingEffect, about: Thing, stage: Stage): RuleId[] {
  const { item, label } = about;
  const { verb } = effect;
  const found: RuleId[] = [];
  const critical = item.spaulding === "critical";
  const soiledGloves = h.hands === "glovedSoiled" || (isGloved(h.hands) && h.worked);
  if (h.due === "gloves" && verb !== "tagOut") found.push("damagedOrSoiledGlovesChanged");
  if (h.hands === "bare" && verb !== "tagOut") found.push("cleanHandsToTouch");
  if (!isGloved(h.hands) && dirty.has(verb)) found.push("glovesForDirtyWork");
  // A wound is wrapped with the gloves that made it: what they carry is this client's own.
  const isClean = clean.has(verb) && (verb !== "open" || critical) && !(verb === "cover" && isSkin(item));
  if (soiledGloves && isClean) found.push("freshGlovesForCleanWork");
  const isMet = contacts.has(verb) && !(verb === "uncover" && state.barrier === "none");
  if (state.wetness !== "none" && isMet && h.hands === "glovedSoiled") found.push("soiledGlovesOnClean");
  if (verb === "wipe" && state.wetness === "none") found.push("wetBeforeWipe");
  if (verb === "apply" && state.barrier !== "none") found.push("wetOnTheSurfaceItself");
  if (verb === "apply" && state.wetness !== "wet" && !state.preCleaned && label?.oneStep === false && !isSkin(item)) {
    found.push("cleanBeforeWet");
  }
  if (verb === "cover" && state.wetness !== "none") found.push("coveredOnlyClean");
  if (verb === "cover" && item.role === "surface" && !state.treated) found.push("disinfectedBeforeCovered");
  // A second accident asks again for what the first had bared; the breakdown finds everything covered.
  const isBare = verb === "uncover" && state.barrier === "none" && !isSkin(item);
  if (isBare && (!state.bared || stage === "breakdown")) found.push("barrierWhereUncovered");
  // A new sharp counts as sterile once it is opened; so the pack must have been.
  if (verb === "open" && critical && item.starts.condition !== "sterile") found.push("sterileUnderTheSkin");
  if (verb === "breakSkin" && critical && state.at !== "station") found.push("sterileUnderTheSkin");
  if (verb === "breakSkin" && critical && item.role !== "sharp" && !state.opened) found.push("sterileUnderTheSkin");
  // A new sharp is another piece. While building and taking apart, whatever else was thrown away is gone; at work a thing
  // may stand for as many pieces as are needed.
  if (state.at === "discarded" && stage !== "late" && item.role !== "sharp" && takesUp.has(verb))
    found.push("thrownStaysOut");
  if (effect.verb === "discard") found.push(...wrongStream(effect.into, state, item, stage));
  return found;
}

function wrongStream(into: string, state: ThingState, item: Item, stage: Stage): RuleId[] {
  if (item.role === "sharp") return [];
  if (into === "sharps") return ["wasteStream"];
  if (into === "general" && (stage !== "setUp" || state.condition === "soiled")) return ["wasteStream"];
  return into === "reprocess" && item.use === "singleUse" ? ["singleUseDiscarded"] : [];
}

/** The step is over: what it wetted is wet, what it wiped is clean, if its class can be cleaned by wiping. */
export function stepOver(state: ThingState, about: Thing): ThingState {
  if (state.pending === "none") return state;
  if (state.pending === "wetted") return { ...state, pending: "none", wetness: "wet" };
  return treatedNow({ ...state, pending: "none" }, about);
}

/** Spaulding 1968: what is wiped becomes clean only if it is noncritical, reusable and not porous. */
function treatedNow(state: ThingState, { item }: Thing): ThingState {
  const dry: ThingState = { ...state, wetness: "none" };
  if (item.spaulding !== "noncritical" || item.use !== "reusable" || item.porous) return dry;
  const live: ItemState = { ...dry, soiledBy: origins[dry.soiledBy] };
  const after = disinfected({ hands: "bare", handsSoiledBy: [], items: { it: live } }, "it").items.it ?? live;
  return { ...dry, condition: after.condition, preCleaned: after.preCleaned, soiledBy: "none", treated: true };
}

/** Time passed, seen wet throughout and attested. What dries by itself is then clean. */
export function timeFull(state: ThingState, about: Thing): ThingState {
  if (state.wetness !== "wet") return state;
  return about.label?.afterwards === "airDry" ? treatedNow(state, about) : { ...state, wetness: "done" };
}

/** Skin, as it is broken with another thing: what would be wrong, and what it is then. The station's own rules. */
export function judgeSkin(state: ThingState, by: Item): { thing: ThingState; broken: readonly RuleId[] } {
  const live: ItemState = { ...state, soiledBy: origins[state.soiledBy] };
  const found = skinRules.filter(({ when }) => when(live)).flatMap(({ code }) => ruleOf(code) ?? []);
  const { opened, barrier } = skinBrokenBy(live, by);
  return { thing: { ...state, opened, barrier }, broken: found };
}

/** A tattoo that nothing covers. */
export const liesOpen = (state: ThingState, item: Item): boolean =>
  isSkin(item) && isOpenWound({ ...state, soiledBy: [] });

/** Cups, towels and the like. */
export const canBeSpiltInto = (item: Item): boolean => item.role === "supply" && item.use === "singleUse";

/** An accident at work: what has this client's blood in it may have more in it now. */
export const afterAccident = (state: ThingState, item: Item): ThingState => {
  const isBloody = state.condition === "soiled" && state.soiledBy === "client";
  return canBeSpiltInto(item) && isBloody && state.at === "station" ? { ...state, spilt: true } : state;
};

/** The bag of this client's waste is closed and gone. */
export const isBagGone = (state: ThingState, item: Item): boolean =>
  item.role === "container" && item.use === "singleUse" && state.at === "discarded";

/** A poured bottle stands open beside broken skin. */
export const standsPoured = (state: ThingState): boolean =>
  state.poured && state.at === "station" && state.barrier === "none";
