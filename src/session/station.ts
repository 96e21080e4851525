/**
 * The station: what each item is, whether it is clean, covered, gone, and what the hands are. The rules are the tables of
 * `transfer` and `contact`; here they are applied. The same function answers live and judges a protocol before use.
 */
import { startsSoiled } from "./addedSteps";
import { chain, type ItemState, isGloved, type Kinds, put, type Station, soil } from "./contact";
import type { DeviationCode } from "./fact";
import type { Effect, Item } from "./protocol";
import { currentRules, foldAsBefore12, foldAsBefore14, foldAsBefore15 } from "./rules";
import { allBroken, isSkin, skinsIn } from "./skin";
import { findingRules, handRules, movements, skinRules } from "./transfer";

export {
  type Barrier,
  type Condition,
  type Hands,
  type ItemState,
  isGloved,
  isSoiledOutside,
  type Kinds,
  meet,
  type Station,
  soil,
  type Whereabouts,
} from "./contact";

export interface Finding {
  readonly code: DeviationCode;
  readonly item: string | null;
}

export const kindsOf = (items: readonly Item[]): Kinds => Object.fromEntries(items.map((i) => [i.id, i]));

export function stationAtStart(
  items: readonly Item[],
  carriedOver: readonly string[],
  rules: string = currentRules,
): Station {
  const isLeft = (item: Item): boolean => carriedOver.includes(item.id) && startsSoiled(item);
  const state = (item: Item): ItemState => ({
    condition: isLeft(item) ? "soiled" : item.starts.condition,
    barrier: item.starts.barrier,
    at: item.starts.at,
    preCleaned: false,
    opened: false,
    soiledBy: isLeft(item) ? ["session before"] : [],
  });
  const station = {
    hands: "bare",
    handsSoiledBy: [],
    items: Object.fromEntries(items.map((i) => [i.id, state(i)])),
  } as const;
  return {
    ...station,
    ...(foldAsBefore12(rules) ? { asBefore12: true } : {}),
    ...(foldAsBefore14(rules) ? { asBefore14: true } : {}),
    ...(foldAsBefore15(rules) ? { asBefore15: true } : {}),
  };
}

export interface Outcome {
  readonly station: Station;
  readonly findings: readonly Finding[];
}

/**
 * What one effect does to the station, and what was not as it should be. Never throws; an unknown item changes nothing
 * (the reader of protocols refuses it).
 */
export function applyEffect(before: Station, effect: Effect, kinds: Kinds): Outcome {
  if (!("item" in effect)) return handsEffect(before, effect);
  const item = before.items[effect.item];
  const kind = kinds[effect.item];
  if (!item || !kind) return { station: before, findings: [] };
  if (isLeftAlone(item, effect)) return { station: before, findings: [] };
  const look = { hands: before.hands, item, kind, effect };
  const onThing = findingRules
    .filter(({ verbs, when }) => verbs.includes(effect.verb) && when(look))
    .map(({ code }) => ({ code, item: effect.item }));
  const findings = effect.verb === "breakSkin" ? [...onThing, ...ofSkin(before, kinds)] : onThing;
  const met = movements[effect.verb].moves(before, effect.item, effect, kind);
  const moved = effect.verb === "breakSkin" ? allBroken(met, kinds, kind) : met;
  // Used all the same, it is out of use still.
  const isStill = item.at === "taggedOut" && effect.verb !== "discard";
  return { station: isStill ? put(moved, effect.item, { at: "taggedOut" }) : moved, findings };
}

const ofSkin = ({ items }: Station, kinds: Kinds): Finding[] =>
  skinsIn(kinds).flatMap((id) => {
    const skin = items[id];
    return skin ? skinRules.filter(({ when }) => when(skin)).map(({ code }) => ({ code, item: id })) : [];
  });

function handsEffect(station: Station, effect: { verb: "wash" | "rub" | "don" | "doff" }): Outcome {
  const { hands } = station;
  const findings = handRules
    .filter(({ verbs, when }) => verbs.includes(effect.verb) && when(hands))
    .map(({ code }) => ({ code, item: null }));
  switch (effect.verb) {
    case "wash":
    case "rub":
      return { station: isGloved(hands) ? station : { ...station, hands: "washed", handsSoiledBy: [] }, findings };
    case "don":
      if (hands === "washed") return { station: { ...station, hands: "glovedClean", handsSoiledBy: [] }, findings };
      return {
        // Gloves over doubtful hands count as soiled until they are changed.
        station: { ...station, hands: "glovedSoiled", handsSoiledBy: chain(station.handsSoiledBy, "hands") },
        findings,
      };
    case "doff":
      return { station: { ...station, hands: "bare" }, findings };
  }
}

/** Cleaning, wetting and wiping pass over what is out of use: it was taken out since it cannot be made ready so. */
const passesOver: ReadonlySet<Effect["verb"]> = new Set([
  "uncover",
  "preClean",
  "apply",
  "wipe",
  "rinse",
  "takeAway",
  "tagOut",
]);
export const isLeftAlone = (item: Pick<ItemState, "at"> | undefined, { verb }: Effect): boolean =>
  item?.at === "taggedOut" && passesOver.has(verb);

/** What is single-use, or a sharp, is thrown away instead. */
export const canBeTaggedOut = (station: Station, kinds: Kinds, id: string): boolean => {
  const [item, kind] = [station.items[id], kinds[id]];
  const isHere = item?.at === "station" || item?.at === "away";
  return isHere && kind?.use === "reusable" && kind.role !== "sharp" && kind.role !== "skin";
};

export const taggedOut = (station: Station): string[] =>
  Object.entries(station.items).flatMap(([id, item]) => (item.at === "taggedOut" ? [id] : []));

/** Nobody watched what happened to it meanwhile. */
export function backInUse(station: Station, id: string): Station {
  const covered = station.items[id]?.barrier === "covered" ? ({ barrier: "soiledCover" } as const) : {};
  return put(station, id, {
    at: "station",
    condition: "soiled",
    preCleaned: false,
    soiledBy: ["out of use"],
    ...covered,
  });
}

/** The surface has had its whole process: clean again, whatever it carried. */
export const disinfected = (station: Station, id: string): Station =>
  put(station, id, { condition: "clean", preCleaned: false, soiledBy: [] });

export const fellDown = (station: Station, id: string): Station =>
  put(station, id, { condition: "soiled", preCleaned: false, soiledBy: ["floor"] });

/** Where the barrier is off already, what it covered is soiled all the same. */
export const barrierTorn = (station: Station, id: string): Station => {
  const isOff = station.items[id]?.barrier === "none" && !station.asBefore15;
  return soil(isOff ? station : put(station, id, { barrier: "torn" }), id, ["torn barrier"]);
};

/** Not yet safe for the next client: soiled, under this client's barrier, or single-use and still lying there. */
export function isUnready(item: ItemState, kind: Item | undefined): boolean {
  // It leaves with the client.
  if (isSkin(kind)) return false;
  // A barrier serves one client (NEHA body art model code, 8.1); what is put away under one is no better.
  const unsafe = item.condition === "soiled" || item.barrier !== "none";
  // Out of use for this client; the next set-up begins with it.
  if (item.at === "taggedOut") return true;
  if (item.at !== "station") return item.at === "away" && unsafe;
  // Everything disposable that lay on the station is discarded, used or not (common practice, no source).
  return kind?.use === "singleUse" || unsafe;
}

export const unready = (station: Station, kinds: Kinds): string[] =>
  Object.entries(station.items).flatMap(([id, item]) => (isUnready(item, kinds[id]) ? [id] : []));
