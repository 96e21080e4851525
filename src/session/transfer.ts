/**
 * The rules of the station as two tables, a row each, with its source: what each verb does, and what was not as it should
 * be. The same rows answer live and judge a protocol before use. "From memory" was not read again for this table.
 */
import {
  chain,
  type Hands,
  type ItemState,
  isGloved,
  isSoiledOutside,
  meet,
  put,
  type Station,
  soil,
  soilHands,
} from "./contact";
import type { DeviationCode } from "./fact";
import type { Effect, Item, Verb } from "./protocol";
import { antisepticOn, isSkin, isUnprepared } from "./skin";

const glovesCarry = "CDC and WHO 2009, glove use: change between a soiled and a clean site";
const beforeContact = "WHO 2009, hand hygiene before contact";
const spaulding = "Spaulding 1968; CDC 2008, Table 1";
const bloodborne = "29 CFR 1910.1030";
const common = "common practice, no source";

type ItemVerb = Exclude<Verb, "wash" | "rub" | "don" | "doff">;
export type ItemEffect = Extract<Effect, { verb: ItemVerb }>;

export interface Movement {
  readonly words: string;
  readonly moves: (station: Station, id: string, effect: ItemEffect, kind: Item) => Station;
  readonly source: string;
}

/** What a verb does to the hands and the thing. Wet clocks are kept by the fold: `apply` and `wipe` are only the touch. */
export const movements: Readonly<Record<ItemVerb, Movement>> = {
  touch: { words: "Hand and thing meet.", moves: meet, source: glovesCarry },
  cover: {
    words: "They meet; the cover is soiled if the gloves are. A wound is wrapped with the gloves that made it.",
    moves: (s, id, _e, kind) => {
      if (isSkin(kind)) return put(s, id, { barrier: "covered" });
      return put(meet(s, id), id, { barrier: s.hands === "glovedSoiled" ? "soiledCover" : "covered" });
    },
    source: "NEHA body art model code, 8.1: a barrier serves one client",
  },
  uncover: {
    words: "They meet and the cover is gone; soiled gloves soil what lay under it. Without a cover nothing is met.",
    moves: (s, id, _e, kind) => {
      if (isSkin(kind)) return put(s, id, { barrier: "none" });
      if (s.items[id]?.barrier === "none" && !s.asBefore12) return s;
      const bared = put(meet(s, id), id, { barrier: "none" });
      return s.hands === "glovedSoiled" ? soil(bared, id, chain(s.handsSoiledBy, "gloves")) : bared;
    },
    source: glovesCarry,
  },
  open: {
    words:
      "The pack is open at the station; a new sharp is a sterile one. Only soiled gloves or unwashed hands meet it.",
    moves: (s, id, _e, { role }) => {
      const fresh = role === "sharp" ? put(s, id, { condition: "sterile" }) : s;
      const met = s.hands === "glovedSoiled" || s.hands === "bare" ? meet(fresh, id) : fresh;
      return put(met, id, { opened: true, at: "station" });
    },
    source: `${spaulding}, critical items`,
  },
  discard: {
    words: "The thing is gone, or put aside for reprocessing; what is soiled outside soils the hand.",
    moves: (s, id, effect) => {
      const item = s.items[id];
      const held = item && isSoiledOutside(item) ? soilHands(s, id) : s;
      const isAside = effect.verb === "discard" && effect.into === "reprocess";
      return put(held, id, { at: isAside ? "reprocess" : "discarded", barrier: "none" });
    },
    source: `${bloodborne}(d)(4)(iii)`,
  },
  fill: {
    words: "What is put into it soils it through the hand that holds it.",
    moves: meet,
    source: `${bloodborne}(d)(4)(ii)(E): reusable containers are decontaminated, from memory`,
  },
  preClean: {
    words: "They meet; visible soil is gone.",
    moves: (s, id) => put(meet(s, id), id, { preCleaned: true }),
    source: "CDC 2008; WHO 2014 Annex G: cleaned of blood before disinfection",
  },
  apply: {
    words: "Nothing yet: its clock counts. Skin is prepared by its antiseptic, which dries as its label says.",
    moves: (s, id, _e, kind) => (isSkin(kind) ? antisepticOn(s, id) : s),
    source: "the product's label",
  },
  wipe: {
    words: "Nothing by itself: its clock says what it is worth.",
    moves: (s) => s,
    source: "the product's label",
  },
  rinse: { words: "Nothing by itself.", moves: (s) => s, source: "the product's label" },
  bring: {
    words: "They meet; the thing is at the station.",
    moves: (s, id) => put(meet(s, id), id, { at: "station" }),
    source: common,
  },
  takeAway: {
    words: "They meet; the thing is away, as it is.",
    moves: (s, id) => put(meet(s, id), id, { at: "away" }),
    source: common,
  },
  park: { words: "They meet.", moves: meet, source: common },
  unpark: { words: "They meet.", moves: meet, source: common },
  tagOut: {
    words: "The thing is out of use, as it is; no hand needs to meet it.",
    moves: (s, id) => put(s, id, { at: "taggedOut" }),
    source: common,
  },
  breakSkin: {
    words: "Blood soils the thing and the hand.",
    moves: (s, id) => soilHands(put(s, id, { condition: "soiled", preCleaned: false, soiledBy: ["client"] }), id),
    source: `${bloodborne}(d)(1): universal precautions, from memory`,
  },
};

export interface Look {
  readonly hands: Hands;
  readonly item: ItemState;
  readonly kind: Item;
  readonly effect: Effect;
}

export interface FindingRule {
  readonly verbs: readonly Verb[];
  readonly code: DeviationCode;
  readonly when: (look: Look) => boolean;
  readonly words: string;
  readonly source: string;
}

const soiledGloves = ({ hands }: Look): boolean => hands === "glovedSoiled";
const bare = ({ hands }: Look): boolean => hands === "bare";
const noGloves = ({ hands }: Look): boolean => !isGloved(hands);
const carries = ({ item }: Look): boolean => isSoiledOutside(item);

/** For each verb in this order; the first is the one that is said as the reason against a step. */
export const findingRules: readonly FindingRule[] = [
  {
    verbs: ["touch", "cover", "open", "fill", "bring", "park", "unpark", "breakSkin"],
    code: "usedTaggedOut",
    when: ({ item }) => item.at === "taggedOut",
    words: "What was taken out of use is left alone until it is taken back.",
    source: common,
  },
  {
    verbs: ["touch"],
    code: "touchedWithSoiledGloves",
    when: (l) => soiledGloves(l) && l.item.barrier !== "covered" && !carries(l),
    words: "Soiled gloves touch nothing clean that has no cover.",
    source: glovesCarry,
  },
  {
    verbs: ["touch"],
    code: "touchedWithUnwashedHands",
    when: (l) => noGloves(l) && carries(l) && l.item.soiledBy.length > 0,
    words: "What carries soil is not touched without gloves.",
    source: `${bloodborne}(d)(3)(ix), from memory`,
  },
  {
    verbs: ["cover"],
    code: "coveredUnclean",
    when: (l) => carries(l) && !isSkin(l.kind),
    words: "A cover goes over what is clean.",
    source: common,
  },
  {
    verbs: ["cover"],
    code: "touchedWithSoiledGloves",
    when: (l) => soiledGloves(l) && !isSkin(l.kind),
    words: "Covers are put on with clean gloves or washed hands.",
    source: glovesCarry,
  },
  { verbs: ["cover"], code: "touchedWithUnwashedHands", when: bare, words: "The same.", source: beforeContact },
  {
    verbs: ["open"],
    code: "openedAgain",
    when: ({ item, kind }) => item.opened && kind.role !== "sharp",
    words: "A sterile pack is opened once.",
    source: spaulding,
  },
  {
    verbs: ["open"],
    code: "openedWithSoiledGloves",
    when: soiledGloves,
    words: "Packs are opened with clean gloves or washed hands.",
    source: `${spaulding}; aseptic handling: ${common}`,
  },
  { verbs: ["open"], code: "openedWithUnwashedHands", when: bare, words: "The same.", source: beforeContact },
  {
    verbs: ["open"],
    code: "usedUnsterile",
    when: ({ item, kind }) => kind.spaulding === "critical" && item.condition !== "sterile" && kind.role !== "sharp",
    words: "A critical thing comes sterile from its pack.",
    source: spaulding,
  },
  {
    verbs: ["discard"],
    code: "sharpNotInSharps",
    when: ({ kind, effect }) => kind.role === "sharp" && effect.verb === "discard" && effect.into !== "sharps",
    words: "A sharp goes into the sharps container and nowhere else.",
    source: `${bloodborne}(d)(4)(iii)(A)(1)`,
  },
  {
    verbs: ["discard"],
    code: "touchedWithUnwashedHands",
    when: (l) => noGloves(l) && carries(l),
    words: "What is soiled is not handled without gloves.",
    source: `${bloodborne}(d)(3)(ix), from memory`,
  },
  {
    verbs: ["preClean", "fill"],
    code: "touchedWithUnwashedHands",
    when: noGloves,
    words: "Cleaning, and putting used things away, is done in gloves.",
    source: `${bloodborne}(d)(3)(ix), from memory`,
  },
  {
    verbs: ["wipe", "rinse"],
    code: "wipedWithSoiledGloves",
    when: soiledGloves,
    words: "What is wiped with soiled gloves is soiled again.",
    source: glovesCarry,
  },
  {
    verbs: ["bring"],
    code: "broughtBackSoiled",
    when: ({ item }) => item.condition === "soiled",
    words: "Nothing soiled is brought to the station.",
    source: common,
  },
  {
    verbs: ["breakSkin"],
    code: "skinBrokenWithoutGloves",
    when: noGloves,
    words: "Skin is broken with gloves on.",
    source: `${bloodborne}(d)(3)(ix), from memory`,
  },
  {
    verbs: ["breakSkin"],
    code: "usedUnsterile",
    when: ({ item, kind }) =>
      kind.spaulding === "critical" && item.condition !== "sterile" && item.soiledBy[0] !== "client",
    words: "What goes through skin is sterile, or was when this client's work began.",
    source: spaulding,
  },
];

/** What is found of the client's skin, whatever it is broken with. */
export const skinRules: readonly {
  readonly code: DeviationCode;
  readonly when: (skin: ItemState) => boolean;
  readonly words: string;
  readonly source: string;
}[] = [
  {
    code: "skinNotPrepared",
    when: isUnprepared,
    words: "Antiseptic goes on the skin before the first line.",
    source: common,
  },
];

/** The same for hands alone. */
export const handRules: readonly {
  readonly verbs: readonly Verb[];
  readonly code: DeviationCode;
  readonly when: (hands: Hands) => boolean;
  readonly words: string;
  readonly source: string;
}[] = [
  {
    verbs: ["wash", "rub"],
    code: "washedInGloves",
    when: isGloved,
    words: "Gloves are never washed for re-use.",
    source: `${bloodborne}(d)(3)(ix)(B), from memory`,
  },
  {
    verbs: ["don"],
    code: "glovesOverGloves",
    when: isGloved,
    words: "Used gloves come off before fresh ones go on.",
    source: `${bloodborne}(d)(3)(ix)(A), from memory`,
  },
  {
    verbs: ["don"],
    code: "glovesOverUnwashedHands",
    when: (hands) => hands === "bare",
    words: "Hands are clean before gloves go on, and again as soon as they come off.",
    source: "WHO 2009; CDC glove use; hands that took gloves off count as unwashed",
  },
];
