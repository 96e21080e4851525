/**
 * What hands and things are, and how soil passes when they meet. Contamination passes only through hands or gloves and
 * declared contacts; a barrier takes it instead of what it covers.
 */
import type { Item } from "./protocol";

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
  /** Of a record from before rules 1.2.0, 1.4.0 or 1.5.0 (./rules), which reads on as it did. */
  readonly asBefore12?: true;
  readonly asBefore14?: true;
  readonly asBefore15?: true;
}

export type Kinds = Readonly<Record<string, Item>>;

export const isGloved = (hands: Hands): boolean => hands === "glovedClean" || hands === "glovedSoiled";

/** What a hand meets when it touches the item: the cover where there is one, the item where there is none. */
export const isSoiledOutside = (item: ItemState): boolean =>
  item.barrier === "soiledCover" || (item.barrier !== "covered" && item.condition === "soiled");

/** Longest chain of touches that is kept. Where it began is never forgotten; the links after that fall away first. */
const longestChain = 8;
export const chain = (links: readonly string[], next: string): readonly string[] => {
  if (links.includes(next)) return links;
  return links.length < longestChain ? [...links, next] : [...links.slice(0, 1), ...links.slice(2), next];
};

export const put = (station: Station, id: string, change: Partial<ItemState>): Station => {
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

export const soilHands = (station: Station, id: string): Station => {
  const through = chain(station.items[id]?.soiledBy ?? [], id);
  if (isGloved(station.hands)) return { ...station, hands: "glovedSoiled", handsSoiledBy: through };
  return { ...station, hands: "bare", handsSoiledBy: through };
};

const glovesCarry = "CDC and WHO 2009, glove use: gloves carry from site to site";

/** Who soils whom when a hand or glove meets a thing: the first row that holds. Where none does, nothing passes. */
export const meetings: readonly {
  readonly when: (hands: Hands, item: ItemState, handsSoiledBy: readonly string[]) => boolean;
  readonly words: string;
  readonly moves: (station: Station, id: string) => Station;
  readonly source: string;
}[] = [
  {
    when: (hands) => hands === "glovedSoiled",
    words: "Soiled gloves soil the thing, or the cover over it.",
    moves: (station, id) => soil(station, id, chain(station.handsSoiledBy, "gloves")),
    source: glovesCarry,
  },
  {
    when: (_hands, item) => isSoiledOutside(item),
    words: "A thing soiled outside soils clean gloves, and bare hands.",
    moves: soilHands,
    source: `${glovesCarry}; 29 CFR 1910.1030(d)(3)`,
  },
  {
    when: (hands, _item, handsSoiledBy) => hands === "bare" && handsSoiledBy.length > 0,
    words: "Bare hands that were soiled, and not washed since, soil the thing.",
    moves: (station, id) => soil(station, id, chain(station.handsSoiledBy, "hands")),
    source: "WHO 2009, hand hygiene after touching surroundings",
  },
];

export function meet(station: Station, id: string): Station {
  const item = station.items[id];
  const row = item && meetings.find(({ when }) => when(station.hands, item, station.handsSoiledBy));
  return row ? row.moves(station, id) : station;
}
