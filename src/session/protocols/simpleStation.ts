/**
 * A station on one page, for the tests of the bundled protocols: much simpler than ../station and written apart from it.
 * Sets of what is soiled, covered, wet and gone; one line for each way to do wrong. Every clock is taken to run its time.
 */
import type { Effect, Protocol, Step } from "../protocol";

type Hands = "bare" | "washed" | "gloved" | "gloved and soiled";

export interface Walked {
  readonly hands: Hands;
  /** "step: what was wrong with which item", in order. */
  readonly wrongs: readonly string[];
  /** Still at the station and not fit for the next client. */
  readonly leftOver: readonly string[];
  /** Opened and not in the sharps container. */
  readonly sharpsOut: number;
}

export function walk(protocol: Protocol, steps: readonly Step[]): Walked {
  const kinds = new Map(protocol.items.map((i) => [i.id, i]));
  const having = (test: (i: Protocol["items"][number]) => boolean) =>
    new Set(protocol.items.filter(test).map((i) => i.id));
  const soiled = having((i) => i.starts.condition === "soiled");
  const sterile = having((i) => i.starts.condition === "sterile");
  const away = having((i) => i.starts.at === "away");
  const oneStep = new Set(protocol.products.filter((p) => p.label.oneStep).map((p) => p.id));
  const covered = new Set<string>();
  const soiledCovers = new Set<string>();
  const cleaned = new Set<string>();
  const wet = new Set<string>();
  const gone = new Set<string>();
  const opened = new Set<string>();
  let hands: Hands = "bare";
  let sharpsOut = 0;
  const isSkin = (id: string) => kinds.get(id)?.role === "skin";
  /** Untouched, prepared, open, covered: the client's skin. */
  let skin = "untouched" as "untouched" | "prepared" | "open" | "covered";
  const wrongs: string[] = [];

  const gloved = () => hands === "gloved" || hands === "gloved and soiled";
  const dirtyToTouch = (id: string) => (covered.has(id) ? soiledCovers.has(id) : soiled.has(id));
  /** A hand meets the item: dirt goes over to whichever side is clean. */
  const meet = (id: string) => {
    if (hands === "gloved and soiled") (covered.has(id) ? soiledCovers : soiled).add(id);
    else if (dirtyToTouch(id)) hands = gloved() ? "gloved and soiled" : "bare";
  };

  const happen = (effect: Effect, wrong: (what: string) => number) => {
    if (effect.verb === "wash" || effect.verb === "rub") {
      if (gloved()) wrong("hands washed in gloves");
      else hands = "washed";
      return;
    }
    if (effect.verb === "don") {
      if (hands !== "washed") wrong("gloves over unwashed hands");
      hands = "gloved";
      return;
    }
    if (effect.verb === "doff") {
      hands = "bare";
      return;
    }
    const id = effect.item;
    const sharp = kinds.get(id)?.role === "sharp";
    // What may be away already is taken away all the same: an accident may have left it out.
    const usual = !["discard", "breakSkin", "bring", "takeAway"].includes(effect.verb);
    if (usual && !sharp && (gone.has(id) || away.has(id))) wrong(`${effect.verb} ${id}, which is not here`);
    if (hands === "bare") wrong(`${effect.verb} ${id} with unwashed hands`);
    if (isSkin(id)) {
      skin = effect.verb === "apply" ? "prepared" : effect.verb === "cover" ? "covered" : skin;
      return;
    }
    switch (effect.verb) {
      case "touch":
        if (hands === "gloved and soiled" && !covered.has(id) && !soiled.has(id)) wrong(`soiled gloves on clean ${id}`);
        return meet(id);
      case "bring":
        if (soiled.has(id) || hands === "gloved and soiled") wrong(`brought ${id} soiled`);
        away.delete(id);
        return;
      case "takeAway":
        // Single-use, it does not come back.
        if (kinds.get(id)?.use !== "singleUse" && (soiled.has(id) || hands === "gloved and soiled"))
          wrong(`took ${id} away soiled`);
        away.add(id);
        return;
      case "cover":
        if (soiled.has(id) || wet.has(id)) wrong(`covered ${id} before it was ready`);
        if (hands === "gloved and soiled") wrong(`covered ${id} with soiled gloves`);
        covered.add(id);
        return;
      case "uncover":
        if (!covered.has(id)) wrong(`uncovered ${id}, which had no cover`);
        if (hands === "gloved and soiled") soiled.add(id);
        meet(id);
        covered.delete(id);
        soiledCovers.delete(id);
        return;
      case "open":
        if (hands === "gloved and soiled") wrong(`opened ${id} with soiled gloves`);
        if (opened.has(id) && !sharp) wrong(`opened ${id} again`);
        opened.add(id);
        if (sharp) {
          sharpsOut += 1;
          soiled.delete(id);
        }
        return;
      case "breakSkin":
        if (!gloved()) wrong("skin met without gloves");
        if (skin === "untouched") wrong("skin broken without antiseptic");
        if (sharp || skin !== "covered") skin = "open";
        if (sterile.has(id) && !opened.has(id)) wrong(`${id} met skin out of no sterile pack`);
        soiled.add(id);
        hands = "gloved and soiled";
        return;
      case "discard":
        if (sharp !== (effect.into === "sharps")) wrong(`${id} into the wrong stream`);
        if (sharp) sharpsOut = effect.all ? 0 : Math.max(0, sharpsOut - 1);
        meet(id);
        gone.add(id);
        return;
      case "preClean":
        if (!gloved()) wrong(`cleaned ${id} without gloves`);
        meet(id);
        cleaned.add(id);
        return;
      case "apply":
        if (covered.has(id)) wrong(`applied over the cover of ${id}`);
        if (soiled.has(id) && !cleaned.has(id) && !oneStep.has(effect.product)) wrong(`applied to uncleaned ${id}`);
        wet.add(id);
        return;
      case "wipe":
      case "rinse":
        if (!wet.has(id)) wrong(`wiped ${id}, which was never wet`);
        if (hands !== "gloved") wrong(`wiped ${id} without clean gloves`);
        for (const set of [wet, soiled, cleaned]) set.delete(id);
        return;
      case "park":
      case "unpark":
        return meet(id);
    }
  };

  for (const step of steps)
    for (const effect of step.effects) happen(effect, (what) => wrongs.push(`${step.id}: ${what}`));
  if (skin === "open") wrongs.push("the client left with an open tattoo");
  const leftOver = protocol.items
    .filter(
      ({ id, use }) =>
        !isSkin(id) &&
        !gone.has(id) &&
        !away.has(id) &&
        (use === "singleUse" || soiled.has(id) || covered.has(id) || wet.has(id)),
    )
    .map((i) => i.id);
  return { hands, wrongs, leftOver, sharpsOut };
}
