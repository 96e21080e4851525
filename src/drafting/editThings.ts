/**
 * Items and products: added, changed, renamed, taken out. A new id is written wherever the old one stood; with a thing
 * that is taken out go the effects and questions that named it, since nothing may name what is not there.
 */
import type { Effect, Item, Label, ProductSlot, Protocol } from "../session/protocol";
import type { Part } from "./edit";
import { mapSteps } from "./place";

export type ThingEdit =
  | { readonly do: "addItem"; readonly item: Item }
  | { readonly do: "changeItem"; readonly item: string; readonly part: Part<Item> }
  | { readonly do: "removeItem"; readonly item: string }
  | { readonly do: "addProduct"; readonly product: ProductSlot }
  | { readonly do: "changeProduct"; readonly product: string; readonly part: Part<Pick<ProductSlot, "id" | "use">> }
  | { readonly do: "changeLabel"; readonly product: string; readonly part: Part<Label> }
  | { readonly do: "removeProduct"; readonly product: string };

export function editThings(protocol: Protocol, edit: ThingEdit): Protocol | string {
  const { items, products } = protocol;
  switch (edit.do) {
    case "addItem":
      return { ...protocol, items: [...items, edit.item] };
    case "addProduct":
      return { ...protocol, products: [...products, edit.product] };
    case "changeItem": {
      if (!items.some(({ id }) => id === edit.item)) return "$.items";
      const changed = items.map((item) => (item.id === edit.item ? ({ ...item, ...edit.part } as Item) : item));
      const { id = edit.item } = edit.part;
      // An id that another has would melt two things into one, and no later rename could part them.
      const isTaken = id !== edit.item && items.some((item) => item.id === id);
      return id === edit.item || isTaken
        ? { ...protocol, items: changed }
        : renameItem({ ...protocol, items: changed }, edit.item, id);
    }
    case "changeProduct": {
      if (!products.some(({ id }) => id === edit.product)) return "$.products";
      const changed = products.map((slot) =>
        slot.id === edit.product ? ({ ...slot, ...edit.part } as ProductSlot) : slot,
      );
      const { id = edit.product } = edit.part;
      const isTaken = id !== edit.product && products.some((slot) => slot.id === id);
      return id === edit.product || isTaken
        ? { ...protocol, products: changed }
        : renameProduct({ ...protocol, products: changed }, edit.product, id);
    }
    case "changeLabel": {
      if (!products.some(({ id }) => id === edit.product)) return "$.products";
      const changed = products.map((slot) =>
        slot.id === edit.product ? { ...slot, label: { ...slot.label, ...edit.part } as Label } : slot,
      );
      return { ...protocol, products: changed };
    }
    case "removeItem": {
      const others = items.filter(({ id }) => id !== edit.item);
      if (others.length === items.length) return "$.items";
      const events = protocol.events.map((flow) => ({
        ...flow,
        asksItem: flow.asksItem.filter((id) => id !== edit.item),
      }));
      return without({ ...protocol, items: others, events }, (effect) => "item" in effect && effect.item === edit.item);
    }
    case "removeProduct": {
      const others = products.filter(({ id }) => id !== edit.product);
      if (others.length === products.length) return "$.products";
      return without({ ...protocol, products: others }, (effect) => usesProduct(effect, edit.product));
    }
  }
}

const usesProduct = (effect: Effect, product: string): boolean => effect.verb === "apply" && effect.product === product;

const without = (protocol: Protocol, isGone: (effect: Effect) => boolean): Protocol =>
  mapSteps(protocol, (step) => ({ ...step, effects: step.effects.filter((effect) => !isGone(effect)) }));

function renameItem(protocol: Protocol, from: string, to: string): Protocol {
  const events = protocol.events.map((flow) => ({
    ...flow,
    asksItem: flow.asksItem.map((id) => (id === from ? to : id)),
  }));
  return mapSteps({ ...protocol, events }, (step) => ({
    ...step,
    effects: step.effects.map((effect) =>
      "item" in effect && effect.item === from ? { ...effect, item: to } : effect,
    ),
  }));
}

const renameProduct = (protocol: Protocol, from: string, to: string): Protocol =>
  mapSteps(protocol, (step) => ({
    ...step,
    effects: step.effects.map((effect) =>
      effect.verb === "apply" && effect.product === from ? { ...effect, product: to } : effect,
    ),
  }));

/** How many effects name the item, so that it can be said what goes with it. */
export const effectsNaming = (protocol: Protocol, item: string): number =>
  [protocol.setUp, protocol.dressing, protocol.breakdown, protocol.resuming, ...protocol.events.map((f) => f.steps)]
    .flat()
    .flatMap(({ effects }) => effects)
    .filter((effect) => "item" in effect && effect.item === item).length;
