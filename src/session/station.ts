/**
 * The station: what each item is, whether it is clean, covered, gone, and what the hands are. One rule for each verb.
 * Contamination passes only through hands or gloves and declared contacts; a barrier takes it instead of what it covers.
 * The same function answers live and judges a protocol before use.
 */
import { startsSoiled } from "./addedSteps";
import type { DeviationCode } from "./fact";
import type { Effect, Item } from "./protocol";

export type Hands = "bare" | "washed" | "glovedClean" | "glovedSoiled";
export type Condition = "sterile" | "clean" | "soiled";
export type Barrier = "none" | "covered" | "soiledCover" | "torn";
export type Whereabouts = "station" | "away" | "discarded" | "reprocess" | "taggedOut";

export interface ItemState {
  readonly condition: Condition;
  readonly barrier: Barrier;
  readonly at: Whereabouts;
  /** Cleaned of visible soil since it was last soiled. */
  readonly preCleaned: boolean;
  readonly opened: boolean;
  /** The touches that soiled it, first to last. */
  readonly soiledBy: readonly string[];
}

export interface Station {
  readonly hands: Hands;
  /** What soiled the gloves or hands; empty while they are clean. */
  readonly handsSoiledBy: readonly string[];
  readonly items: Readonly<Record<string, ItemState>>;
}

export interface Finding {
  readonly code: DeviationCode;
  readonly item: string | null;
}

export type Kinds = Readonly<Record<string, Item>>;

export const kindsOf = (items: readonly Item[]): Kinds => Object.fromEntries(items.map((i) => [i.id, i]));

export function stationAtStart(items: readonly Item[], carriedOver: readonly string[]): Station {
  const isLeft = (item: Item): boolean => carriedOver.includes(item.id) && startsSoiled(item);
  const state = (item: Item): ItemState => ({
    condition: isLeft(item) ? "soiled" : item.starts.condition,
    barrier: item.starts.barrier,
    at: item.starts.at,
    preCleaned: false,
    opened: false,
    soiledBy: isLeft(item) ? ["session before"] : [],
  });
  return { hands: "bare", handsSoiledBy: [], items: Object.fromEntries(items.map((i) => [i.id, state(i)])) };
}

export const isGloved = (hands: Hands): boolean => hands === "glovedClean" || hands === "glovedSoiled";

/** What a hand meets when it touches the item: the cover where there is one, the item where there is none. */
export const isSoiledOutside = (item: ItemState): boolean =>
  item.barrier === "soiledCover" || (item.barrier !== "covered" && item.condition === "soiled");

/** Longest chain of touches that is kept. Where it began is never forgotten; the links after that fall away first. */
const longestChain = 8;
const chain = (links: readonly string[], next: string): readonly string[] => {
  if (links.includes(next)) return links;
  return links.length < longestChain ? [...links, next] : [...links.slice(0, 1), ...links.slice(2), next];
};

const put = (station: Station, id: string, change: Partial<ItemState>): Station => {
  const before = station.items[id];
  return before ? { ...station, items: { ...station.items, [id]: { ...before, ...change } } } : station;
};

/** The item is soiled through the chain that leads to it. Its cover takes it where it has one. */
export function soil(station: Station, id: string, through: readonly string[]): Station {
  const item = station.items[id];
  if (!item || item.at === "discarded") return station;
  if (item.barrier === "covered" || item.barrier === "soiledCover") {
    return put(station, id, { barrier: "soiledCover", soiledBy: through });
  }
  return put(station, id, { condition: "soiled", preCleaned: false, soiledBy: through });
}

const soilHands = (station: Station, id: string): Station => {
  const through = chain(station.items[id]?.soiledBy ?? [], id);
  if (isGloved(station.hands)) return { ...station, hands: "glovedSoiled", handsSoiledBy: through };
  return { ...station, hands: "bare", handsSoiledBy: through };
};

/**
 * A hand or glove meets the item: soil goes from the soiled side to the clean one.
 * Sources: CDC and WHO glove use (gloves carry between sites); 29 CFR 1910.1030(d)(3).
 */
export function meet(station: Station, id: string): Station {
  const item = station.items[id];
  if (!item) return station;
  if (station.hands === "glovedSoiled") return soil(station, id, chain(station.handsSoiledBy, "gloves"));
  if (isSoiledOutside(item)) return soilHands(station, id);
  if (station.hands === "bare" && station.handsSoiledBy.length > 0) {
    return soil(station, id, chain(station.handsSoiledBy, "hands"));
  }
  return station;
}

export interface Outcome {
  readonly station: Station;
  readonly findings: readonly Finding[];
}

/**
 * What one effect does to the station, and what was not as it should be. Wet clocks are kept by `fold`: `apply` and
 * `wipe` here are only the touching. Never throws; an unknown item changes nothing (the reader of protocols refuses it).
 */
export function applyEffect(before: Station, effect: Effect, kinds: Kinds): Outcome {
  if (!("item" in effect)) return handsEffect(before, effect);
  const item = before.items[effect.item];
  const kind = kinds[effect.item];
  if (!item || !kind) return { station: before, findings: [] };
  const findings: Finding[] = [];
  const find = (code: DeviationCode) => findings.push({ code, item: effect.item });
  const { hands } = before;
  let station = before;

  switch (effect.verb) {
    case "touch":
      // Nothing clean is touched with soiled gloves unless something covers it (CDC: clean before dirty, never back).
      if (hands === "glovedSoiled" && item.barrier !== "covered" && !isSoiledOutside(item))
        find("touchedWithSoiledGloves");
      // Bare hands do not touch what carries blood (29 CFR 1910.1030(d)(3)(ix)).
      if (!isGloved(hands) && isSoiledOutside(item) && item.soiledBy.length > 0) find("touchedWithUnwashedHands");
      return { station: meet(before, effect.item), findings };

    case "cover":
      if (isSoiledOutside(item)) find("coveredUnclean");
      if (hands === "glovedSoiled") find("touchedWithSoiledGloves");
      if (hands === "bare") find("touchedWithUnwashedHands");
      station = meet(before, effect.item);
      return {
        station: put(station, effect.item, { barrier: hands === "glovedSoiled" ? "soiledCover" : "covered" }),
        findings,
      };

    case "uncover": {
      station = meet(before, effect.item);
      const bySoiled = hands === "glovedSoiled";
      station = put(station, effect.item, { barrier: "none" });
      if (bySoiled) station = soil(station, effect.item, chain(before.handsSoiledBy, "gloves"));
      return { station, findings };
    }

    case "open":
      // A sterile pack is opened with washed hands or clean gloves, once (Spaulding 1968: critical items).
      if (item.opened && kind.role !== "sharp") find("openedAgain");
      if (hands === "glovedSoiled") find("openedWithSoiledGloves");
      if (hands === "bare") find("openedWithUnwashedHands");
      if (kind.spaulding === "critical" && item.condition !== "sterile" && kind.role !== "sharp") find("usedUnsterile");
      station = kind.role === "sharp" ? put(before, effect.item, { condition: "sterile" }) : before;
      station = hands === "glovedSoiled" || hands === "bare" ? meet(station, effect.item) : station;
      return { station: put(station, effect.item, { opened: true, at: "station" }), findings };

    case "discard":
      // Contaminated sharps go into the sharps container and nowhere else (29 CFR 1910.1030(d)(4)(iii)(A)).
      if (kind.role === "sharp" && effect.into !== "sharps") find("sharpNotInSharps");
      if (!isGloved(hands) && isSoiledOutside(item)) find("touchedWithUnwashedHands");
      station = isSoiledOutside(item) ? soilHands(before, effect.item) : before;
      return {
        station: put(station, effect.item, {
          at: effect.into === "reprocess" ? "reprocess" : "discarded",
          barrier: "none",
        }),
        findings,
      };

    case "preClean":
      if (!isGloved(hands)) find("touchedWithUnwashedHands");
      return { station: put(meet(before, effect.item), effect.item, { preCleaned: true }), findings };

    case "apply":
      return { station: before, findings };

    case "wipe":
    case "rinse":
      // What is wiped with soiled gloves is soiled again.
      if (hands === "glovedSoiled") find("wipedWithSoiledGloves");
      return { station: before, findings };

    case "bring":
      if (item.condition === "soiled") find("broughtBackSoiled");
      return { station: put(meet(before, effect.item), effect.item, { at: "station" }), findings };

    case "takeAway":
      return { station: put(meet(before, effect.item), effect.item, { at: "away" }), findings };

    case "park":
    case "unpark":
      return { station: meet(before, effect.item), findings };

    case "breakSkin":
      if (!isGloved(hands)) find("skinBrokenWithoutGloves");
      if (kind.spaulding === "critical" && item.condition !== "sterile" && item.soiledBy[0] !== "client")
        find("usedUnsterile");
      station = put(before, effect.item, { condition: "soiled", preCleaned: false, soiledBy: ["client"] });
      return { station: soilHands(station, effect.item), findings };
  }
}

/**
 * Hands and gloves. Hand hygiene before donning and after doffing (CDC, WHO 2009); gloves are never washed for re-use
 * (29 CFR 1910.1030(d)(3)(ix)(A)).
 */
function handsEffect(station: Station, effect: { verb: "wash" | "rub" | "don" | "doff" }): Outcome {
  const { hands } = station;
  const found = (code: DeviationCode): readonly Finding[] => [{ code, item: null }];
  switch (effect.verb) {
    case "wash":
    case "rub":
      if (isGloved(hands)) return { station, findings: found("washedInGloves") };
      return { station: { ...station, hands: "washed", handsSoiledBy: [] }, findings: [] };
    case "don":
      if (hands === "washed") return { station: { ...station, hands: "glovedClean", handsSoiledBy: [] }, findings: [] };
      return {
        // Gloves over doubtful hands count as soiled until they are changed.
        station: { ...station, hands: "glovedSoiled", handsSoiledBy: chain(station.handsSoiledBy, "hands") },
        findings: found(isGloved(hands) ? "glovesOverGloves" : "glovesOverUnwashedHands"),
      };
    case "doff":
      return { station: { ...station, hands: "bare" }, findings: [] };
  }
}

/** The surface has had its whole process: clean again, whatever it carried. */
export const disinfected = (station: Station, id: string): Station =>
  put(station, id, { condition: "clean", preCleaned: false, soiledBy: [] });

export const fellDown = (station: Station, id: string): Station =>
  put(station, id, { condition: "soiled", preCleaned: false, soiledBy: ["floor"] });

export const barrierTorn = (station: Station, id: string): Station => {
  const torn = put(station, id, { barrier: "torn" });
  return soil(torn, id, ["torn barrier"]);
};

/** Not yet safe for the next client: soiled, under this client's barrier, or single-use and still lying there. */
export function isUnready(item: ItemState, kind: Item | undefined): boolean {
  // A barrier serves one client (NEHA body art model code, 8.1); what is put away under one is no better.
  const unsafe = item.condition === "soiled" || item.barrier !== "none";
  if (item.at !== "station") return item.at === "away" && unsafe;
  // Everything disposable that lay on the station is discarded, used or not (common practice, no source).
  return kind?.use === "singleUse" || unsafe;
}

export const unready = (station: Station, kinds: Kinds): string[] =>
  Object.entries(station.items).flatMap(([id, item]) => (isUnready(item, kinds[id]) ? [id] : []));
