/** What a step does to items and hands: chosen from the closed vocabulary, put in order, taken out. */
import type { Effect, Protocol, Step, Verb } from "../session/protocol";
import { isSkin } from "../session/skin";
import { inserted } from "./editSteps";
import { findStep, mapSteps } from "./place";

export type EffectEdit =
  | { readonly do: "addEffect"; readonly step: string; readonly effect: Effect }
  | { readonly do: "setEffect"; readonly step: string; readonly at: number; readonly effect: Effect }
  | { readonly do: "moveEffect"; readonly step: string; readonly at: number; readonly to: number }
  | { readonly do: "removeEffect"; readonly step: string; readonly at: number };

export function editEffect(protocol: Protocol, edit: EffectEdit): Protocol | string {
  const found = findStep(protocol, edit.step);
  if (!found) return "$";
  const { effects } = found.step;
  const here = edit.do === "addEffect" ? undefined : effects[edit.at];
  if (edit.do !== "addEffect" && !here) return `$.${found.place}[${found.at}].effects`;
  const put = (next: readonly Effect[]): Protocol =>
    mapSteps(protocol, (step): Step => (step.id === edit.step ? { ...step, effects: [...next] } : step));
  switch (edit.do) {
    case "addEffect":
      return put([...effects, edit.effect]);
    case "setEffect":
      return put(effects.map((effect, at) => (at === edit.at ? edit.effect : effect)));
    case "removeEffect":
      return put(effects.filter((_, at) => at !== edit.at));
    case "moveEffect": {
      const others = effects.filter((_, at) => at !== edit.at);
      return put(inserted(others, edit.to, here as Effect));
    }
  }
}

export const verbs = [
  ...(["touch", "cover", "uncover", "open", "discard", "fill", "preClean", "apply", "wipe", "rinse"] as const),
  ...(["wash", "rub", "don", "doff", "bring", "takeAway", "park", "unpark", "breakSkin", "tagOut"] as const),
] as const satisfies readonly Verb[];

const handVerbs = ["wash", "rub", "don", "doff"] as const;
export type HandVerb = (typeof handVerbs)[number];
export const isHandVerb = (verb: Verb): verb is HandVerb => (handVerbs as readonly Verb[]).includes(verb);

/**
 * The effect with another verb, as much as can be kept of what was chosen.
 * @returns null where the verb asks for a product and the protocol has none of the kind.
 */
export function effectWith(verb: Verb, before: Effect | null, protocol: Protocol): Effect | null {
  if (isHandVerb(verb)) return { verb };
  const item = before && "item" in before ? before.item : protocol.items[0]?.id;
  if (item === undefined) return null;
  if (verb === "discard") {
    const isSharp = protocol.items.find(({ id }) => id === item)?.role === "sharp";
    if (before?.verb === "discard") return before;
    return { verb, item, into: isSharp ? "sharps" : "contaminated", all: false };
  }
  if (verb === "apply") {
    if (before?.verb === "apply") return before;
    const product = productsOn(protocol, item)[0]?.id;
    return product === undefined ? null : { verb, item, product };
  }
  return { verb, item };
}

/** What may be put on it: on skin an antiseptic, on everything else a surface disinfectant. */
export const productsOn = ({ items, products }: Protocol, item: string): Protocol["products"] => {
  const wanted = isSkin(items.find(({ id }) => id === item)) ? "skinAntiseptic" : "surfaceDisinfectant";
  return products.filter(({ use }) => use === wanted);
};

/** The same done to another thing; where its product does not go on that, with the first that does. */
export function effectOn<E extends Effect & { readonly item: string }>(item: string, effect: E, protocol: Protocol): E {
  if (effect.verb !== "apply") return { ...effect, item };
  const may = productsOn(protocol, item).map(({ id }) => id);
  return { ...effect, item, product: may.includes(effect.product) ? effect.product : (may[0] ?? effect.product) };
}
