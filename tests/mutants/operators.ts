/**
 * Ways in which a written procedure goes wrong, each as an operator over protocols. They were written down before the
 * rules that must catch them, and are not changed to suit those.
 */
import type { Effect, Item, Protocol } from "../../src/session/protocol";
import {
  eachEffect,
  eachStep,
  isHygiene,
  isOnly,
  type Mutant,
  moved,
  replaced,
  verbs,
  withEffects,
  without,
} from "./edit";

export interface Operator {
  readonly id: string;
  readonly words: string;
  readonly mutants: (protocol: Protocol) => Mutant[];
}

const kind = (p: Protocol, id: string): Item | undefined => p.items.find((i) => i.id === id);
const isSharp = (p: Protocol, e: Effect): boolean => "item" in e && kind(p, e.item)?.role === "sharp";
const isSingleUse = (p: Protocol, e: Effect): boolean => "item" in e && kind(p, e.item)?.use === "singleUse";
const isCritical = (p: Protocol, e: Effect): boolean => "item" in e && kind(p, e.item)?.spaulding === "critical";
const isOneStep = (p: Protocol, product: string): boolean =>
  p.products.find((s) => s.id === product)?.label.oneStep ?? false;

/** Takes every effect of these verbs on the item out of one list. */
const forgotten = (p: Protocol, list: "setUp" | "breakdown", item: string, ...gone: Effect["verb"][]): Protocol => ({
  ...p,
  [list]: p[list].map((s) =>
    withEffects(
      s,
      s.effects.filter((e) => !("item" in e && e.item === item && gone.includes(e.verb))),
    ),
  ),
});

const itemsIn = (p: Protocol, list: "setUp" | "breakdown", verb: Effect["verb"]): string[] => [
  ...new Set(p[list].flatMap((s) => s.effects.flatMap((e) => (e.verb === verb && "item" in e ? [e.item] : [])))),
];

/** Puts an item's effect of one verb directly before or behind its effect of another verb in the list. */
function beside(
  p: Protocol,
  list: "setUp" | "breakdown",
  item: string,
  [what, where, anchor]: [Effect["verb"], "before" | "behind", Effect["verb"]],
): Protocol {
  const effect = p[list].flatMap((s) => s.effects).find((e) => e.verb === what && "item" in e && e.item === item);
  if (!effect) return p;
  const cut = forgotten(p, list, item, what);
  return {
    ...cut,
    [list]: cut[list].map((s) =>
      withEffects(
        s,
        s.effects.flatMap((e) => {
          if (e.verb !== anchor || !("item" in e) || e.item !== item) return [e];
          return where === "before" ? [effect, e] : [e, effect];
        }),
      ),
    ),
  };
}

const forEachItem = (
  p: Protocol,
  list: "setUp" | "breakdown",
  verb: Effect["verb"],
  change: (item: string) => Protocol,
): Mutant[] => itemsIn(p, list, verb).map((item) => ({ what: `${list}: ${item}`, protocol: change(item) }));

/** First of the hygiene steps that stand together, so that a run of them counts once. */
const opensHygiene = (steps: readonly Parameters<typeof isHygiene>[0][], at: number): boolean =>
  isHygiene(steps[at]) && !isHygiene(steps[at - 1]);
const hygieneRun = (steps: readonly Parameters<typeof isHygiene>[0][], at: number): number[] => {
  const run = [at];
  while (isHygiene(steps[at + run.length])) run.push(at + run.length);
  return run;
};

export const operators: readonly Operator[] = [
  {
    id: "gloveChangeDropped",
    words: "a whole glove change is left out",
    mutants: (p) =>
      eachStep(
        p,
        (s, at, { steps }) => isOnly(s, "doff") && isHygiene(steps[at + 1]) && isOnly(steps[at + 2], "don"),
        (steps, at) => without(steps, at, at + 1, at + 2),
      ),
  },
  {
    id: "handHygieneDropped",
    words: "hands are not washed or rubbed where they were",
    mutants: (p) =>
      eachStep(
        p,
        (_s, at, { steps }) => opensHygiene(steps, at) && hygieneRun(steps, at).length === hygieneAround(steps, at),
        (steps, at) => without(steps, ...hygieneRun(steps, at)),
      ),
  },
  {
    id: "glovesNotPutOn",
    words: "fresh gloves are not put on",
    mutants: (p) =>
      eachStep(
        p,
        (s) => isOnly(s, "don"),
        (steps, at) => without(steps, at),
      ),
  },
  {
    id: "glovesNotTakenOff",
    words: "old gloves are not taken off",
    mutants: (p) =>
      eachStep(
        p,
        (s) => isOnly(s, "doff"),
        (steps, at) => without(steps, at),
      ),
  },
  {
    id: "glovesBeforeHands",
    words: "gloves go on before the hands are washed",
    mutants: (p) =>
      eachStep(
        p,
        (s, at, { steps }) => isOnly(s, "don") && isHygiene(steps[at - 1]),
        (steps, at) => moved(steps, at, at - hygieneBehind(steps, at)),
      ),
  },
  {
    id: "sharpsAfterGloves",
    words: "sharps are put away only after the glove change that follows them",
    mutants: (p) =>
      eachStep(
        p,
        (s, at, { steps, name }) =>
          name === "breakdown" && isOnly(s, "discard") && steps.slice(at, at + 6).some((n) => isOnly(n, "don")),
        (steps, at) => moved(steps, at, at + steps.slice(at).findIndex((n) => isOnly(n, "don"))),
      ),
  },
  {
    id: "sharpIntoBag",
    words: "a sharp goes into the waste bag",
    mutants: (p) =>
      eachEffect(
        p,
        (e) => e.verb === "discard" && isSharp(p, e),
        (e) => [{ ...e, into: "contaminated" } as Effect],
      ),
  },
  {
    id: "sharpForgotten",
    words: "a sharp is not put into the container",
    mutants: (p) => eachEffect(p, (e) => e.verb === "discard" && isSharp(p, e)),
  },
  {
    id: "countDropped",
    words: "the sharps are not counted",
    mutants: (p) =>
      eachStep(
        p,
        (s) => s.kind === "count",
        (steps, at) => without(steps, at),
      ),
  },
  {
    id: "countTooSoon",
    words: "the sharps are counted before they are in the container",
    mutants: (p) =>
      eachStep(
        p,
        (s, at) => s.kind === "count" && at > 0,
        (steps, at) => moved(steps, at, at - 1),
      ),
  },
  {
    id: "wipedBeforeWet",
    words: "a surface is wiped before it is wetted",
    mutants: (p) =>
      (["setUp", "breakdown"] as const).flatMap((list) =>
        forEachItem(p, list, "wipe", (item) => beside(p, list, item, ["wipe", "before", "apply"])),
      ),
  },
  {
    id: "wipeForgotten",
    words: "a wet surface is never wiped",
    mutants: (p) => eachEffect(p, (e) => e.verb === "wipe"),
  },
  {
    id: "wetForgotten",
    words: "a surface is wiped, but never wetted",
    mutants: (p) => eachEffect(p, (e) => e.verb === "apply"),
  },
  {
    id: "cleaningForgotten",
    words: "disinfectant goes on without cleaning, though its label does not clean",
    mutants: (p) =>
      eachEffect(p, (e, _s, { steps }) => {
        if (e.verb !== "preClean") return false;
        const wet = steps.flatMap((s) => s.effects).find((w) => w.verb === "apply" && w.item === e.item);
        return wet?.verb === "apply" && !isOneStep(p, wet.product);
      }),
  },
  {
    id: "itemForgotten",
    words: "a thing is forgotten in the breakdown altogether",
    mutants: (p) =>
      forEachItem(p, "breakdown", "apply", (item) =>
        forgotten(p, "breakdown", item, "uncover", "preClean", "apply", "wipe"),
      ),
  },
  {
    id: "uncoveredNotDisinfected",
    words: "a barrier comes off and what lay under it is never disinfected",
    mutants: (p) =>
      forEachItem(p, "breakdown", "uncover", (item) => forgotten(p, "breakdown", item, "preClean", "apply", "wipe")),
  },
  {
    id: "barrierLeftOn",
    words: "a barrier is not taken off after the client",
    mutants: (p) => forEachItem(p, "breakdown", "uncover", (item) => forgotten(p, "breakdown", item, "uncover")),
  },
  {
    id: "barrierNeverOn",
    words: "a thing that is touched at work is not covered",
    mutants: (p) => forEachItem(p, "setUp", "cover", (item) => forgotten(p, "setUp", item, "cover")),
  },
  {
    id: "wettedOverTheBarrier",
    words: "disinfectant goes on the barrier, and the barrier comes off afterwards",
    mutants: (p) =>
      forEachItem(p, "breakdown", "uncover", (item) => beside(p, "breakdown", item, ["uncover", "behind", "apply"])),
  },
  {
    id: "coveredBeforeDisinfected",
    words: "a surface is covered while it is still wet",
    mutants: (p) => forEachItem(p, "setUp", "wipe", (item) => beside(p, "setUp", item, ["cover", "before", "wipe"])),
  },
  {
    id: "wasteIntoHouseholdBin",
    words: "what blood reached goes into the household bin",
    mutants: (p) =>
      eachEffect(
        p,
        (e, _s, { name }) => e.verb === "discard" && e.into === "contaminated" && name === "breakdown",
        (e) => [{ ...e, into: "general" } as Effect],
      ),
  },
  {
    id: "wasteIntoSharps",
    words: "soft waste fills the sharps container",
    mutants: (p) =>
      eachEffect(
        p,
        (e) => e.verb === "discard" && e.into === "contaminated",
        (e) => [{ ...e, into: "sharps" } as Effect],
      ),
  },
  {
    id: "disposableLeft",
    words: "a single-use thing is left lying for the next client",
    mutants: (p) =>
      eachEffect(
        p,
        (e, _s, { name }) => e.verb === "discard" && name === "breakdown" && isSingleUse(p, e) && !isSharp(p, e),
      ),
  },
  {
    id: "singleUseReprocessed",
    words: "a single-use thing is put aside to be used again",
    mutants: (p) =>
      eachEffect(
        p,
        (e, _s, { name }) => e.verb === "discard" && name === "breakdown" && isSingleUse(p, e) && !isSharp(p, e),
        (e) => [{ ...e, into: "reprocess" } as Effect],
      ),
  },
  {
    id: "needleReused",
    words: "no new needle is opened where one was",
    mutants: (p) => eachEffect(p, (e) => e.verb === "open" && isSharp(p, e) && isCritical(p, e)),
  },
  {
    id: "usedUnopened",
    words: "a sterile thing is used without its pack being opened at the station",
    mutants: (p) => eachEffect(p, (e) => e.verb === "open" && isCritical(p, e) && !isSharp(p, e)),
  },
  {
    id: "openedTwice",
    words: "a pack that was opened before is taken as sterile again",
    mutants: (p) =>
      eachEffect(
        p,
        (e) => e.verb === "open" && isCritical(p, e) && !isSharp(p, e),
        (e) => [e, e],
      ),
  },
  {
    id: "openedBeforeFreshGloves",
    words: "a sterile pack is opened before the glove change that should come first",
    mutants: (p) =>
      eachStep(
        p,
        (s, at, { steps }) =>
          verbs(s).includes("open") &&
          isOnly(steps[at - 1], "don") &&
          isOnly(steps[at - 1 - hygieneBehind(steps, at - 1) - 1], "doff"),
        (steps, at) => moved(steps, at, at - 2 - hygieneBehind(steps, at - 1)),
      ),
  },
  {
    id: "bottleStays",
    words: "a bottle is not taken away before the skin is broken",
    mutants: (p) => eachEffect(p, (e) => e.verb === "takeAway"),
  },
  {
    id: "bottleFetchedWithOldGloves",
    words: "a bottle is fetched before the glove change",
    mutants: (p) =>
      eachStep(
        p,
        (s, at, { steps, name }) =>
          name !== "breakdown" &&
          name !== "dressing" &&
          name !== "resuming" &&
          verbs(s).includes("bring") &&
          isOnly(steps[at - 1], "don"),
        (steps, at) => moved(steps, at, at - 2 - hygieneBehind(steps, at - 1)),
      ),
  },
  {
    id: "criticalWiped",
    words: "a critical thing is wiped and stays, where it should be sterilised",
    mutants: (p) =>
      eachEffect(
        p,
        (e) => e.verb === "discard" && e.into === "reprocess" && isCritical(p, e),
        (e) => {
          const product = p.products.find((s) => s.use === "surfaceDisinfectant")?.id ?? "";
          const item = "item" in e ? e.item : "";
          return [
            { verb: "preClean", item },
            { verb: "apply", item, product },
          ];
        },
      ).map((m) => ({
        ...m,
        protocol: {
          ...m.protocol,
          breakdown: m.protocol.breakdown.map((s) => {
            const last = s.effects.findLast((e) => e.verb === "wipe");
            const wet = new Set(
              m.protocol.breakdown.flatMap((t) => t.effects.flatMap((e) => (e.verb === "apply" ? [e.item] : []))),
            );
            const wiped = new Set(
              m.protocol.breakdown.flatMap((t) => t.effects.flatMap((e) => (e.verb === "wipe" ? [e.item] : []))),
            );
            const missing = [...wet].filter((id) => !wiped.has(id));
            return last
              ? withEffects(s, [...s.effects, ...missing.map((item): Effect => ({ verb: "wipe", item }))])
              : s;
          }),
        },
      })),
  },
  {
    id: "handsMayBeLeftOut",
    words: "a step for hands or gloves may be left out",
    mutants: (p) =>
      eachStep(
        p,
        (s, at, { steps }) =>
          (isOnly(s, "doff") || isOnly(s, "don") || (opensHygiene(steps, at) && hygieneAround(steps, at) === 1)) &&
          !s.skippable,
        (steps, at) => {
          const step = steps[at];
          return step ? replaced(steps, at, { ...step, skippable: true }) : steps;
        },
      ),
  },
];

/** How many hygiene steps stand directly before this one. */
function hygieneBehind(steps: readonly Parameters<typeof isHygiene>[0][], at: number): number {
  let n = 0;
  while (isHygiene(steps[at - 1 - n])) n += 1;
  return n;
}

/** How many hygiene steps lie between the last and the next change of gloves, effectless steps between them included. */
function hygieneAround(steps: readonly Parameters<typeof isHygiene>[0][], at: number): number {
  const isPlain = (i: number) => isHygiene(steps[i]) || steps[i]?.effects.length === 0;
  let n = 0;
  for (let i = at; isPlain(i); i += 1) n += isHygiene(steps[i]) ? 1 : 0;
  for (let i = at - 1; isPlain(i); i -= 1) n += isHygiene(steps[i]) ? 1 : 0;
  return n;
}
