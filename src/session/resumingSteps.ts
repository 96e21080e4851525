/**
 * What going on after an accident asks for, by where it happened. At work: all of it. While the station is built or taken
 * apart nothing goes back to the skin, so the steps that lead there fall away; hands, sharps and the telling stay.
 */
import type { Effect, ListName, Protocol, Step } from "./protocol";

export interface Accident {
  /** Null at work. */
  readonly list: ListName | null;
  readonly gloved: boolean;
  /** A sharp was opened and is not in the container. */
  readonly sharpsOut: boolean;
}

const onHands: ReadonlySet<Effect["verb"]> = new Set(["wash", "rub", "don", "doff"]);
const isHandsOnly = (step: Step): boolean => step.effects.length > 0 && step.effects.every((e) => onHands.has(e.verb));
const does = (step: Step, verb: Effect["verb"]): boolean => step.effects.some((e) => e.verb === verb);
const onlySharps = (step: Step): boolean =>
  step.effects.length > 0 && step.effects.every((e) => e.verb === "discard" && e.into === "sharps");

/** @param asBefore14 as rules before 1.4.0 had it (./rules) */
export function resumingSteps(
  protocol: Protocol,
  { list, gloved, sharpsOut }: Accident,
  asBefore14 = false,
): readonly Step[] {
  if (list === null) return protocol.resuming;
  const needsGloves = gloved || sharpsOut;
  const sharps = new Set(protocol.items.filter((i) => i.role === "sharp").map((i) => i.id));
  const opensSharp = (step: Step): boolean => step.effects.some((e) => e.verb === "open" && sharps.has(e.item));
  /** Hands are as they should be, and nothing was done with them since. */
  let areFresh = false;
  const steps = protocol.resuming.filter((step) => {
    // The needle that the set-up had opened is gone; the work begins with another.
    if (step.atWork && !(list === "setUp" && sharpsOut && opensSharp(step))) return false;
    if (onlySharps(step) && !sharpsOut) return false;
    if (!needsGloves && does(step, "don")) return false;
    if (isHandsOnly(step)) {
      if (areFresh) return false;
      areFresh = needsGloves ? does(step, "don") : does(step, "wash") || does(step, "rub");
    } else if (step.effects.length > 0) areFresh = false;
    return true;
  });
  return gloved || asBefore14 ? steps : endingBare(steps);
}

/** Hands that were bare put gloves on for the sharps alone: what is asked for next may be to wash them. */
function endingBare(steps: readonly Step[]): readonly Step[] {
  const sharps = steps.findIndex(onlySharps);
  const last = steps.findLastIndex((s) => does(s, "don"));
  return sharps >= 0 && last > sharps ? steps.filter((_, at) => at !== last) : steps;
}
