/** Reads a protocol from anywhere. The bytes are hostile: what comes back is a protocol, or where and why it is not one. */
import type { z } from "zod";
import { isAdded } from "./addedSteps";
import { everyStep, Protocol } from "./protocol";

export type ProtocolTrouble =
  | { code: "too-large"; at: string; message: string }
  | { code: "not-json"; at: string; message: string }
  | { code: "wrong-shape"; at: string; message: string }
  | { code: "duplicate-id"; at: string; message: string }
  | { code: "unknown-item"; at: string; message: string }
  | { code: "unknown-product"; at: string; message: string };

export type ReadProtocol = { ok: true; protocol: Protocol } | { ok: false; trouble: ProtocolTrouble };

/** A protocol of 400 steps is under 200 KB; anything past this is not one. */
const mostBytes = 2_000_000;

const no = (code: ProtocolTrouble["code"], at: string, message: string): ReadProtocol => ({
  ok: false,
  trouble: { code, at, message },
});

/** `steps[3].effects[0].item`, as a person would point at it. */
const pathOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => (typeof key === "number" ? `${text}[${key}]` : `${text}.${String(key)}`), "$");

/** @param text JSON text of a protocol file. Never throws. */
export function readProtocol(text: string): ReadProtocol {
  if (text.length > mostBytes) return no("too-large", "$", `The file is larger than ${mostBytes} characters.`);
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
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
    return no("wrong-shape", "$", "The file is nested too deeply to be a protocol.");
  }
  if (!parsed.success) {
    const issue = parsed.error.issues[0] as z.core.$ZodIssue;
    return no("wrong-shape", pathOf(issue.path), `${issue.message}.`);
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
  const products = new Set<string>();
  for (const [i, slot] of protocol.products.entries()) {
    if (products.has(slot.id)) return no("duplicate-id", `$.products[${i}].id`, `Two products are "${slot.id}".`);
    products.add(slot.id);
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
      if (effect.verb === "apply" && !products.has(effect.product)) {
        const at = `$.${path}.effects[${e}].product`;
        return no("unknown-product", at, `No product is called "${effect.product}". Add it to "products".`);
      }
    }
  }
  return { ok: true, protocol };
}
