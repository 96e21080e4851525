/**
 * The words a protocol is written with: a text in both languages, one effect on one or more items, a step. A bundled
 * protocol then reads as the list it is. Shapes are those of ../protocol.
 */
import type { Effect, Step, Text, WasteStream } from "../protocol";

/** English, then Spanish. */
export type Both = readonly [en: string, es: string];

export const text = ([en, es]: Both): Text => ({ en, es });

type ItemVerb = Exclude<Effect["verb"], "discard" | "apply" | "wash" | "rub" | "don" | "doff">;
const each =
  (verb: ItemVerb) =>
  (...items: string[]): Effect[] =>
    items.map((item) => ({ verb, item }));

export const touch = each("touch");
export const cover = each("cover");
export const uncover = each("uncover");
export const open = each("open");
export const fill = each("fill");
export const preClean = each("preClean");
export const wipe = each("wipe");
export const bring = each("bring");
export const takeAway = each("takeAway");
export const park = each("park");
export const unpark = each("unpark");
export const breakSkin = each("breakSkin");

export const apply = (product: string, ...items: string[]): Effect[] =>
  items.map((item) => ({ verb: "apply", item, product }));

export const discard = (into: WasteStream, ...items: string[]): Effect[] =>
  items.map((item) => ({ verb: "discard", item, into, all: false }));

/** Every one that is in use or parked goes into the sharps container. */
export const discardAllSharps = (...items: string[]): Effect[] =>
  items.map((item) => ({ verb: "discard", item, into: "sharps", all: true }));

export interface Wording {
  readonly say: Both;
  readonly show: Both;
  readonly caution?: Both;
  readonly does?: readonly (readonly Effect[])[];
  /** Hands-on seconds, for planning. */
  readonly sec?: number;
}

/** A step that guards health: nobody may leave it out. */
export const must = (id: string, wording: Wording): Step => written(id, "do", false, wording);

/** The last step of a flow that came straight on the work; nobody leaves it out. */
export const backToTheSkin = (id: string, wording: Wording): Step => ({ ...must(id, wording), atWork: true });

/** A step of a flow that the breakdown passes over; before it, nobody leaves it out. */
export const beforeBreakdown = (id: string, wording: Wording): Step => ({
  ...must(id, wording),
  beforeBreakdown: true,
});

/** A step that may be left out with a reason. */
export const may = (id: string, wording: Wording): Step => written(id, "do", true, wording);

/** A harmless look; several may be read for one answer. */
export const look = (id: string, wording: Wording): Step => written(id, "check", true, wording);

/** The read-back of the sharps. */
export const countSharps = (id: string, wording: Wording): Step => written(id, "count", false, wording);

function written(id: string, kind: Step["kind"], skippable: boolean, wording: Wording): Step {
  return {
    id,
    kind,
    say: text(wording.say),
    show: text(wording.show),
    ...(wording.caution && { caution: text(wording.caution) }),
    effects: (wording.does ?? []).flat(),
    handsOnSec: wording.sec ?? 15,
    skippable,
  };
}
