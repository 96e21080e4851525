/** What a step does, in one line: "cover with a barrier: lamp, chair; wash hands". Pure. */
import { isHandVerb } from "../../drafting/editEffects";
import type { Effect, Protocol, Text } from "../../session/protocol";
import type { ProtocolWords } from "./words";

type InWords = (text: Text) => string;

/** @param text a protocol's words in the language of the screen */
export function effectWords(w: ProtocolWords, protocol: Protocol, effects: readonly Effect[], text: InWords): string {
  const said: { verb: string; things: string[] }[] = [];
  for (const effect of effects) {
    const verb = verbOf(w, protocol, effect, text);
    const thing = "item" in effect ? [nameOf(protocol, effect.item, text)] : [];
    const last = said.at(-1);
    if (last?.verb === verb && !isHandVerb(effect.verb)) last.things.push(...thing);
    else said.push({ verb, things: thing });
  }
  return said.map(({ verb, things }) => (things.length === 0 ? verb : `${verb}: ${things.join(", ")}`)).join("; ");
}

function verbOf(w: ProtocolWords, protocol: Protocol, effect: Effect, text: InWords): string {
  if (effect.verb === "discard") return `${w.verbs.discard} (${w.streams[effect.into]})`;
  if (effect.verb !== "apply") return w.verbs[effect.verb];
  const product = protocol.products.find(({ id }) => id === effect.product);
  return `${w.verbs.apply} (${product ? text(product.label.name) : effect.product})`;
}

function nameOf(protocol: Protocol, id: string, text: InWords): string {
  const item = protocol.items.find((one) => one.id === id);
  return item ? text(item.calledAs) : id;
}
