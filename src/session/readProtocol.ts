/** Reads a protocol from anywhere. The bytes are hostile: what comes back is a protocol, or where and why it is not one. */
import type { z } from "zod";
import { isAdded } from "./addedSteps";
import { everyStep, Protocol } from "./protocol";
import { shapeTrouble } from "./shapeTrouble";
import { type TroubleSays, troubleEn } from "./troubleWords";

export interface ProtocolTrouble {
  readonly code:
    | "too-large"
    | "not-json"
    | "wrong-shape"
    | "duplicate-id"
    | "unknown-item"
    | "unknown-product"
    | "wrong-product";
  /** `$.steps[3].effects[0].item` */
  readonly at: string;
  /** In English. */
  readonly message: string;
  /** The same in every language. */
  readonly says: TroubleSays;
}

export type ReadProtocol = { ok: true; protocol: Protocol } | { ok: false; trouble: ProtocolTrouble };

/** A protocol of 400 steps is under 200 KB; anything past this is not one. */
export const mostCharacters = 2_000_000;

const no = (code: ProtocolTrouble["code"], at: string, says: TroubleSays): ReadProtocol => {
  const trouble = { code, at, message: says(troubleEn) };
  // Not part of the value: it is compared and printed by its code, its place and its English.
  return { ok: false, trouble: Object.defineProperty(trouble, "says", { value: says }) as ProtocolTrouble };
};

const tooDeep = no("wrong-shape", "$", (words) => words.tooDeep);

/** @param text JSON text of a protocol file. Never throws. */
export function readProtocol(text: string): ReadProtocol {
  if (text.length > mostCharacters) {
    return no("too-large", "$", (words) => words.tooLarge(mostCharacters));
  }
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (problem) {
    if (problem instanceof RangeError) return tooDeep;
    return no("not-json", "$", (words) => words.notJson);
  }
  return asProtocol(json);
}

/** The same for a value already parsed. */
export function asProtocol(json: unknown): ReadProtocol {
  let parsed: ReturnType<typeof Protocol.safeParse>;
  try {
    parsed = Protocol.safeParse(json);
  } catch {
    return tooDeep;
  }
  if (!parsed.success) {
    const issue = parsed.error.issues[0] as z.core.$ZodIssue;
    const { at, says } = shapeTrouble(json, issue);
    return no("wrong-shape", at, says);
  }
  return checkNames(parsed.data);
}

/** Every id stands once, and every item and product that a step names is there. */
function checkNames(protocol: Protocol): ReadProtocol {
  const items = new Map<string, Protocol["items"][number]["role"]>();
  for (const [i, item] of protocol.items.entries()) {
    if (items.has(item.id)) return no("duplicate-id", `$.items[${i}].id`, (words) => words.twoItems(item.id));
    items.set(item.id, item.role);
  }
  const products = new Map<string, Protocol["products"][number]["use"]>();
  for (const [i, slot] of protocol.products.entries()) {
    if (products.has(slot.id)) return no("duplicate-id", `$.products[${i}].id`, (words) => words.twoProducts(slot.id));
    products.set(slot.id, slot.use);
  }
  const events = new Set<string>();
  for (const [i, flow] of protocol.events.entries()) {
    if (events.has(flow.event)) {
      return no("duplicate-id", `$.events[${i}].event`, (words) => words.twoFlows(flow.event));
    }
    events.add(flow.event);
    const stranger = flow.asksItem.findIndex((id) => !items.has(id));
    if (stranger >= 0) {
      const at = `$.events[${i}].asksItem[${stranger}]`;
      return no("unknown-item", at, (words) => words.noItem(String(flow.asksItem[stranger])));
    }
  }
  const steps = new Set<string>();
  for (const { path, step } of everyStep(protocol)) {
    if (steps.has(step.id)) return no("duplicate-id", `$.${path}.id`, (words) => words.twoSteps(step.id));
    if (isAdded(step.id)) {
      return no("duplicate-id", `$.${path}.id`, (words) => words.ownName(step.id));
    }
    steps.add(step.id);
    for (const [e, effect] of step.effects.entries()) {
      if ("item" in effect && !items.has(effect.item)) {
        const at = `$.${path}.effects[${e}].item`;
        return no("unknown-item", at, (words) => words.noItemOfStep(effect.item));
      }
      if (effect.verb !== "apply") continue;
      const at = `$.${path}.effects[${e}].product`;
      const use = products.get(effect.product);
      if (use === undefined) {
        return no("unknown-product", at, (words) => words.noProduct(effect.product));
      }
      const isSkin = items.get(effect.item) === "skin";
      if (isSkin && use !== "skinAntiseptic") {
        return no("wrong-product", at, (words) => words.noAntiseptic(effect.product));
      }
      if (!isSkin && use !== "surfaceDisinfectant") {
        return no("wrong-product", at, (words) => words.noDisinfectant(effect.product));
      }
    }
  }
  return { ok: true, protocol };
}
