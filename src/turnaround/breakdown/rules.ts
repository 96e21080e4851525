/**
 * Which two steps of a breakdown keep the order in which they are written, and why. Everything not named here may be
 * swapped by the plan. A step of hands or gloves, a count, and a step that does nothing the station knows of keep their
 * place: nothing moves across them.
 */
import type { Effect, Item, Step } from "../../session/protocol";

export type OrderRuleId =
  | "keepsItsPlace"
  | "sharpsFirst"
  | "sameThing"
  | "glovesOfItsKind"
  | "wasteBeforeWet"
  | "uncoverBeforeWet"
  | "cleanToDirty"
  | "toolsWipedLast";

export interface OrderRule {
  readonly words: string;
  readonly source: string;
  /** Whether `a`, written before `b`, has to stay before it. */
  readonly holds: (a: Step, b: Step, roleOf: (item: string) => Item["role"] | undefined) => boolean;
}

type Verb = Effect["verb"];

const handVerbs: ReadonlySet<Verb> = new Set(["wash", "rub", "don", "doff"]);
const soilingVerbs: ReadonlySet<Verb> = new Set([
  "preClean",
  "uncover",
  "discard",
  "fill",
  "apply",
  "breakSkin",
  "park",
  "unpark",
]);
const cleanVerbs: ReadonlySet<Verb> = new Set(["wipe", "rinse", "cover", "bring", "open", "takeAway"]);

const has = (step: Step, ...verbs: readonly Verb[]): boolean => step.effects.some((e) => verbs.includes(e.verb));
const itemsOf = (step: Step, ...verbs: readonly Verb[]): string[] =>
  step.effects.flatMap((e) => ("item" in e && (verbs.length === 0 || verbs.includes(e.verb)) ? [e.item] : []));

export const isHandStep = (step: Step): boolean =>
  step.effects.length > 0 && step.effects.every((e) => handVerbs.has(e.verb));

/** What the work does to gloves: soils them, needs them clean, or only touches. */
export function glovesOf(step: Step): "soiled" | "clean" | "either" {
  if (step.effects.some((e) => soilingVerbs.has(e.verb))) return "soiled";
  return step.effects.some((e) => cleanVerbs.has(e.verb)) ? "clean" : "either";
}

/** Neither a piece of work that the station understands, nor one kind of work alone. */
export function keepsItsPlace(step: Step): boolean {
  if (step.kind !== "do" || step.effects.length === 0) return true;
  if (step.effects.some((e) => handVerbs.has(e.verb))) return true;
  return step.effects.some((e) => soilingVerbs.has(e.verb)) && step.effects.some((e) => cleanVerbs.has(e.verb));
}

const common = "common practice, no source";

/** In the order in which they are asked; the first that holds is the reason given. */
export const orderRules: Readonly<Record<OrderRuleId, OrderRule>> = {
  sharpsFirst: {
    words: "Sharps go first.",
    source: "29 CFR 1910.1030(d)(4)(iii)(A)(1): as soon as feasible",
    holds: (a, b, roleOf) => [...itemsOf(a), ...itemsOf(b)].some((id) => roleOf(id) === "sharp"),
  },
  keepsItsPlace: {
    words: "Hands, gloves, counts and steps without a declared effect keep their place.",
    source: "WHO 2009 and CDC glove use; else nothing is known that would make a swap safe",
    holds: (a, b) => keepsItsPlace(a) || keepsItsPlace(b),
  },
  sameThing: {
    words: "What is done to one thing keeps its order: uncovered, cleaned, wetted, wiped.",
    source: "CDC 2008; WHO 2014 Annex G",
    holds: (a, b) => {
      const mere = (step: Step, id: string): boolean =>
        step.effects.every((e) => !("item" in e) || e.item !== id || e.verb === "touch");
      const theirs = new Set(itemsOf(b));
      return itemsOf(a).some((id) => theirs.has(id) && !(mere(a, id) && mere(b, id)));
    },
  },
  glovesOfItsKind: {
    words: "Work with clean gloves and work that soils them are not swapped.",
    source: "CDC and WHO 2009 glove use: from a soiled to a clean site",
    holds: (a, b) => glovesOf(a) !== glovesOf(b),
  },
  wasteBeforeWet: {
    words: "What lies on a surface is thrown away before anything is uncovered, cleaned or wetted.",
    source: common,
    holds: (a, b) => has(a, "discard") && has(b, "uncover", "preClean", "apply"),
  },
  uncoverBeforeWet: {
    words: "Covers are off before anything is cleaned or wetted.",
    source: common,
    holds: (a, b) => has(a, "uncover") && has(b, "preClean", "apply"),
  },
  cleanToDirty: {
    words: "Surfaces are cleaned in the written order, from clean to dirty.",
    source: "CDC environmental cleaning, from memory",
    holds: (a, b) => has(a, "preClean") && has(b, "preClean"),
  },
  toolsWipedLast: {
    words: "Machines and bottles, on their plate, are wiped where the list has them: last.",
    source: common,
    holds: (a, b, roleOf) => {
      const isOnPlate = (step: Step) =>
        itemsOf(step, "wipe", "rinse").some((id) => ["tool", "bottle"].includes(roleOf(id) ?? ""));
      return has(a, "wipe", "rinse") && has(b, "wipe", "rinse") && (isOnPlate(a) || isOnPlate(b));
    },
  },
};
