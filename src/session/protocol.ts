/**
 * A protocol: the studio's written procedure as data. Items that can carry contamination, the products with the facts
 * of their labels, and the steps of each phase with their effects on the items. The artist may edit it; whatever it
 * says, the rules of the session hold.
 */
import { z } from "zod";

/** Not among them: what every JavaScript object has by name, which a look-up by id would find where nothing is. */
export const Id = z
  .string()
  .regex(/^[a-z][A-Za-z0-9]{0,39}$/, "a letter, then letters or digits, 40 at most")
  .refine((id) => !(id in Object.prototype), "not a name that every object has");

/** The same words in each language; English is always there. */
export const Text = z.strictObject({ en: z.string().min(1).max(240), es: z.string().min(1).max(240).optional() });

/** What a container is for. Colours and contractors differ by place, so the protocol names only the stream. */
export const WasteStream = z.enum(["sharps", "contaminated", "general", "reprocess"]);

export const Item = z.strictObject({
  id: Id,
  /** As shown. */
  name: Text,
  /** As spoken: "chair", "lamp". */
  calledAs: Text,
  /** `skin` is the client's: antiseptic is applied to it, and it is covered once it is a wound (./skin). */
  role: z.enum(["surface", "tool", "sharp", "supply", "bottle", "device", "container", "skin"]),
  /** Spaulding 1968: what the item touches decides what must be done to it. */
  spaulding: z.enum(["critical", "semicritical", "noncritical"]),
  use: z.enum(["reusable", "singleUse"]),
  porous: z.boolean().default(false),
  starts: z.strictObject({
    condition: z.enum(["sterile", "clean", "soiled"]),
    barrier: z.enum(["none", "covered"]).default("none"),
    at: z.enum(["station", "away"]).default("station"),
  }),
  /** Its lot and expiry are asked for on the prepare screen. */
  hasLot: z.boolean().default(false),
});

/** One thing done to one item, or to the hands. A closed vocabulary: the station model has one rule for each verb. */
export const Effect = z.discriminatedUnion("verb", [
  z.strictObject({ verb: z.literal("touch"), item: Id }),
  z.strictObject({ verb: z.literal("cover"), item: Id }),
  z.strictObject({ verb: z.literal("uncover"), item: Id }),
  /** Opens a sterile pack or draws a needle; a sharp is counted from here. */
  z.strictObject({ verb: z.literal("open"), item: Id }),
  /** `all` is for sharps: every one in use or parked goes in. */
  z.strictObject({ verb: z.literal("discard"), item: Id, into: WasteStream, all: z.boolean().default(false) }),
  /** Used things go into it: a box, a tray. */
  z.strictObject({ verb: z.literal("fill"), item: Id }),
  z.strictObject({ verb: z.literal("preClean"), item: Id }),
  z.strictObject({ verb: z.literal("apply"), item: Id, product: Id }),
  z.strictObject({ verb: z.literal("wipe"), item: Id }),
  z.strictObject({ verb: z.literal("rinse"), item: Id }),
  z.strictObject({ verb: z.literal("wash") }),
  z.strictObject({ verb: z.literal("rub") }),
  z.strictObject({ verb: z.literal("don") }),
  z.strictObject({ verb: z.literal("doff") }),
  z.strictObject({ verb: z.literal("bring"), item: Id }),
  z.strictObject({ verb: z.literal("takeAway"), item: Id }),
  /** A sharp set aside for the same client, or taken up again. */
  z.strictObject({ verb: z.literal("park"), item: Id }),
  z.strictObject({ verb: z.literal("unpark"), item: Id }),
  z.strictObject({ verb: z.literal("breakSkin"), item: Id }),
  /** Taken out of use: left alone until somebody takes it back, and then it counts as soiled. */
  z.strictObject({ verb: z.literal("tagOut"), item: Id }),
]);

export const Step = z.strictObject({
  id: Id,
  /** `check` may be read in groups in the brisk mode; `count` is the read-back of the sharps. */
  kind: z.enum(["do", "check", "count"]).default("do"),
  /** Spoken: one short sentence in the imperative. */
  say: Text,
  /** Shown large: three to six words. */
  show: Text,
  /** A usual caution, spoken after `say` in the careful mode and shown always. */
  caution: Text.optional(),
  effects: z.array(Effect).max(24).default([]),
  /** Hands-on seconds a practised artist needs; for planning only. */
  handsOnSec: z.number().int().min(1).max(3600).default(15),
  /** A step that guards health may be skipped by nobody. */
  skippable: z.boolean().default(true),
  /**
   * Back to the skin: the last step of a flow, walked only where the flow came straight on the work. Told in the middle
   * of another flow or of a list, the flow ends before it, with the hands that it made. In `resuming`: walked only after
   * an accident at work.
   */
  atWork: z.literal(true).optional(),
  /** In a flow: passed over in the breakdown, where covers come off and none goes on anew. */
  beforeBreakdown: z.literal(true).optional(),
});

/** What can happen while working. Each has a short flow of its own in the protocol. */
export const eventIds = [
  "freshGloves",
  "tornGlove",
  "tornBarrier",
  "newNeedle",
  "parkNeedle",
  "moreInk",
  "dropped",
  "touched",
  "photo",
  "machineSwap",
  "takeBreak",
  "clientLeaves",
  "clientReturns",
  "clientUnwell",
  "stopEarly",
  "note",
] as const;
export const EventId = z.enum(eventIds);

export const EventFlow = z.strictObject({
  event: EventId,
  /** Items the companion names, in this order, when the report needs one ("what was touched? lamp?"). */
  asksItem: z.array(Id).max(40).default([]),
  steps: z.array(Step).max(20),
  /** Where the work goes on after the flow. */
  onwards: z.enum(["continue", "dressing"]).default("continue"),
});

/** The facts of a product's label. */
export const Label = z.strictObject({
  name: Text,
  /** Wet time the label asks for. */
  contactSec: z.number().int().min(1).max(3600),
  /** Re-apply before this, or the clock starts again; null where the label and the artist say nothing. */
  reapplyWithinSec: z.number().int().min(10).max(3600).nullable(),
  /** Cleans and disinfects in one step, only where the label says so. */
  oneStep: z.boolean(),
  afterwards: z.enum(["wipe", "rinse", "airDry"]),
  /** Usable through the end of this day; null while not yet entered. */
  expiry: z.iso.date().nullable(),
});

export const ProductSlot = z.strictObject({
  id: Id,
  use: z.enum(["surfaceDisinfectant", "skinAntiseptic", "handRub"]),
  /** What stands on the shelf unless the artist enters another label. */
  label: Label,
});

export const Protocol = z.strictObject({
  format: z.literal("gloveside-protocol"),
  formatVersion: z.literal(1),
  id: Id,
  version: z.string().regex(/^\d{1,6}\.\d{1,6}\.\d{1,6}$/, "three numbers with points between, like 1.0.0"),
  name: Text,
  about: Text,
  items: z.array(Item).min(1).max(120),
  products: z.array(ProductSlot).max(12),
  setUp: z.array(Step).min(1).max(200),
  events: z.array(EventFlow).max(eventIds.length),
  /** Fresh gloves, dressing and the written aftercare sheet, before anything is taken down. */
  dressing: z.array(Step).min(1).max(60),
  breakdown: z.array(Step).min(1).max(200),
  /** What resuming after an exposure asks for, in order. */
  resuming: z.array(Step).min(1).max(30),
});

export type Text = z.infer<typeof Text>;
export type Item = z.infer<typeof Item>;
export type Effect = z.infer<typeof Effect>;
export type Verb = Effect["verb"];
export type Step = z.infer<typeof Step>;
export type EventId = z.infer<typeof EventId>;
export type EventFlow = z.infer<typeof EventFlow>;
export type Label = z.infer<typeof Label>;
export type ProductSlot = z.infer<typeof ProductSlot>;
export type WasteStream = z.infer<typeof WasteStream>;
export type Protocol = z.infer<typeof Protocol>;

/** The lists that are walked one step at a time. */
export const listNames = ["setUp", "dressing", "breakdown", "resuming"] as const;
export type ListName = (typeof listNames)[number];

/** Every step with the place it stands in, for checks and for rendering speech. */
export function everyStep(protocol: Protocol): { path: string; step: Step }[] {
  const lists = listNames.flatMap((list) => protocol[list].map((step, i) => ({ path: `${list}[${i}]`, step })));
  const flows = protocol.events.flatMap((flow, f) =>
    flow.steps.map((step, i) => ({ path: `events[${f}].steps[${i}]`, step })),
  );
  return [...lists, ...flows];
}
