/** Small questions to the protocol and the labels. Pure. */
import { everyStep, type Label, type Protocol } from "../../src/session/protocol";
import type { SessionInput } from "../../src/session/sessionInput";
import { skinsIn } from "../../src/session/skin";
import { kindsOf } from "../../src/session/station";
import { groupHere, kindsIn, type World } from "../../src/session/world";

const products = new WeakMap<Protocol, ReadonlyMap<string, string>>();

/** The product that the protocol puts on this surface, or else its surface disinfectant; null where it has none. */
export function productFor(protocol: Protocol, surface: string): string | null {
  let known = products.get(protocol);
  if (!known) {
    const pairs = everyStep(protocol).flatMap(({ step }) =>
      step.effects.flatMap((e) => (e.verb === "apply" ? [[e.item, e.product] as const] : [])),
    );
    known = new Map(pairs.reverse());
    products.set(protocol, known);
  }
  return known.get(surface) ?? protocol.products.find((p) => p.use === "surfaceDisinfectant")?.id ?? null;
}

export const labelOf = (
  { input }: { input: Pick<SessionInput, "labels" | "protocol"> },
  product: string,
): Label | undefined => input.labels[product] ?? input.protocol.products.find((p) => p.id === product)?.label;

/** Usable through the end of its day. What has no expiry is never out of date. `id` is an item or a product. */
export function isOutOfDate({ input, world }: { input: SessionInput; world: World }, id: string): boolean {
  const lot = world.lots[id];
  const expiry = lot ? lot.expiry : (labelOf({ input }, id)?.expiry ?? null);
  return expiry !== null && world.today > expiry;
}

/** Surfaces that a product is put on somewhere in the protocol, in the order of its steps; skin is none. */
export const surfacesOf = (protocol: Protocol): string[] => {
  const skins = skinsIn(kindsOf(protocol.items));
  const wetted = everyStep(protocol).flatMap(({ step }) =>
    step.effects.flatMap((e) => (e.verb === "apply" && !skins.includes(e.item) ? [e.item] : [])),
  );
  return [...new Set(wetted)];
};

const takesUp: ReadonlySet<string> = new Set(["open", "bring", "touch"]);

/** Things whose lot the step here takes up: a pack opened, a bottle poured from. A code held up now is one of these. */
export function lotsHere({ input, world }: { input: SessionInput; world: World }): readonly string[] {
  const items = groupHere(input, world)
    .flatMap((step) => step.effects)
    .flatMap((effect) => (takesUp.has(effect.verb) && "item" in effect ? [effect.item] : []))
    .filter((id) => kindsIn(input)[id]?.hasLot);
  return [...new Set(items)];
}

/** Which of them a code is taken for: the first that has no lot yet, else the first. */
export function lotMeant(told: { input: SessionInput; world: World }): string | null {
  const here = lotsHere(told);
  return here.find((id) => told.world.lots[id] === undefined) ?? here[0] ?? null;
}
