/** Reads a protocol from anywhere. The bytes are hostile: what comes back is a protocol, or where and why it is not one. */
import type { z } from "zod";
import { isAdded } from "./addedSteps";
import { everyStep, Protocol } from "./protocol";
import { shapeTrouble } from "./shapeTrouble";

export type ProtocolTrouble =
  | { code: "too-large"; at: string; message: string }
  | { code: "not-json"; at: string; message: string }
  | { code: "wrong-shape"; at: string; message: string }
  | { code: "duplicate-id"; at: string; message: string }
  | { code: "unknown-item"; at: string; message: string }
  | { code: "unknown-product"; at: string; message: string }
  | { code: "wrong-product"; at: string; message: string };

export type ReadProtocol = { ok: true; protocol: Protocol } | { ok: false; trouble: ProtocolTrouble };

/** A protocol of 400 steps is under 200 KB; anything past this is not one. */
export const mostCharacters = 2_000_000;

const no = (code: ProtocolTrouble["code"], at: string, message: string): ReadProtocol => ({
  ok: false,
  trouble: { code, at, message },
});

const tooDeep = no("wrong-shape", "$", "The file is nested too deeply to be a protocol. Export the protocol again.");

/** @param text JSON text of a protocol file. Never throws. */
export function readProtocol(text: string): ReadProtocol {
  if (text.length > mostCharacters) {
    const why = `The file is larger than ${mostCharacters} characters. A protocol of 400 steps has a tenth of that.`;
    return no("too-large", "$", why);
  }
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (problem) {
    if (problem instanceof RangeError) return tooDeep;
    return no("not-json", "$", "The file is not JSON. Export the protocol again and choose that file.");
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
    const { at, message } = shapeTrouble(json, issue);
    return no("wrong-shape", at, message);
  }
  return checkNames(parsed.data);
}

/** Every id stands once, and every item and product that a step names is there. */
function checkNames(protocol: Protocol): ReadProtocol {
  const items = new Set<string>();
  for (const [i, item] of protocol.items.entries()) {
    if (items.has(item.id)) return no("duplicate-id", `$.items[${i}].id`, `Two items are called "${item.id}".`);
    items.add(item.id);
  }
  const products = new Map<string, Protocol["products"][number]["use"]>();
  for (const [i, slot] of protocol.products.entries()) {
    if (products.has(slot.id)) return no("duplicate-id", `$.products[${i}].id`, `Two products are "${slot.id}".`);
    products.set(slot.id, slot.use);
  }
  const events = new Set<string>();
  for (const [i, flow] of protocol.events.entries()) {
    if (events.has(flow.event)) {
      return no("duplicate-id", `$.events[${i}].event`, `The event "${flow.event}" has two flows.`);
    }
    events.add(flow.event);
    const stranger = flow.asksItem.findIndex((id) => !items.has(id));
    if (stranger >= 0) {
      const at = `$.events[${i}].asksItem[${stranger}]`;
      return no("unknown-item", at, `No item is called "${flow.asksItem[stranger]}". Add it to "items".`);
    }
  }
  const steps = new Set<string>();
  for (const { path, step } of everyStep(protocol)) {
    if (steps.has(step.id)) return no("duplicate-id", `$.${path}.id`, `Two steps are called "${step.id}".`);
    if (isAdded(step.id)) {
      const why = `"${step.id}" begins like the companion's own steps. Give the step another id.`;
      return no("duplicate-id", `$.${path}.id`, why);
    }
    steps.add(step.id);
    for (const [e, effect] of step.effects.entries()) {
      if ("item" in effect && !items.has(effect.item)) {
        const at = `$.${path}.effects[${e}].item`;
        return no("unknown-item", at, `No item is called "${effect.item}". Add it to "items" or correct the step.`);
      }
      if (effect.verb !== "apply") continue;
      const at = `$.${path}.effects[${e}].product`;
      const use = products.get(effect.product);
      if (use === undefined) {
        return no("unknown-product", at, `No product is called "${effect.product}". Add it to "products".`);
      }
      if (use !== "surfaceDisinfectant") {
        const why = `"${effect.product}" is no surface disinfectant. Only one of those makes a thing clean.`;
        return no("wrong-product", at, why);
      }
    }
  }
  return { ok: true, protocol };
}
