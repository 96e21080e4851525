/** Things as they are when they are new: the careful choice in every field, and an id that nothing else has. */
import { isAdded } from "../session/addedSteps";
import type { Item, ProductSlot, Protocol, Step } from "../session/protocol";
import { stepIds } from "./place";

const none: ReadonlySet<string> = new Set();
const longestId = 40;

/** The words as an id, with a number behind it where that one is taken: "coverTheLamp", "coverTheLamp2". */
export function freeId(words: string, taken: ReadonlySet<string>, otherwise: string): string {
  const plain = words
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[^A-Za-z0-9]+(.)?/g, (_, next: string | undefined) => next?.toUpperCase() ?? "");
  const letters = plain.replace(/^[^A-Za-z]+/, "");
  const base = letters === "" ? otherwise : letters.charAt(0).toLowerCase() + letters.slice(1);
  for (let number = 1; ; number += 1) {
    const tail = number === 1 ? "" : String(number);
    const id = base.slice(0, longestId - tail.length) + tail;
    if (!taken.has(id)) return id;
  }
}

/** Nobody may leave it out until the artist says so. */
export const newStep = (protocol: Protocol, words: string): Step => ({
  // Some beginnings of ids are for steps that the companion adds by itself.
  id: freeId(isAdded(freeId(words, none, "step")) ? `step ${words}` : words, stepIds(protocol), "step"),
  kind: "do",
  say: { en: words },
  show: { en: words },
  effects: [],
  handsOnSec: 15,
  skippable: false,
});

export const newItem = (protocol: Protocol, words: string): Item => ({
  id: freeId(words, new Set(protocol.items.map(({ id }) => id)), "item"),
  name: { en: words },
  calledAs: { en: words },
  role: "supply",
  spaulding: "noncritical",
  use: "singleUse",
  porous: false,
  starts: { condition: "clean", barrier: "none", at: "station" },
  hasLot: false,
});

/** Ten minutes: the longest contact time that is common on labels (common practice, no source). The label governs. */
export const newProduct = (protocol: Protocol, words: string): ProductSlot => ({
  id: freeId(words, new Set(protocol.products.map(({ id }) => id)), "product"),
  use: "surfaceDisinfectant",
  label: {
    name: { en: words },
    contactSec: 600,
    reapplyWithinSec: null,
    oneStep: false,
    afterwards: "wipe",
    expiry: null,
  },
});

/** A copy of its own, to be edited: another id and name, and a version that begins anew. */
export function copyOf(protocol: Protocol, name: Protocol["name"], takenIds: ReadonlySet<string>): Protocol {
  const id = freeId(protocol.id, takenIds, "protocol");
  return { ...protocol, id, version: "1.0.0", name };
}
