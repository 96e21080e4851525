/**
 * One edge walked in one slice: from hands and watched things to what may follow, or the rules that it breaks. A thing
 * that is not watched may be in any state that it may have at that place; where one of those breaks a rule, that way is
 * not followed here, since the slice that watches the thing reports it.
 */
import { handsAtClose, thingAtClose } from "./closing";
import { isOnThing, type ThingEffect } from "./conduct";
import type { Edge, Node } from "./graph";
import type { RuleId } from "./rules";
import { areOut, atCount, atWork, beforeSharps, leftLying, sharpMoves, sharpsAtClose } from "./sharps";
import { type Station, sharpsName } from "./slice";

export interface Here {
  readonly hands: number;
  /** One number for each watched name, in order. */
  readonly things: readonly number[];
}

export interface Followed {
  readonly next: readonly Here[];
  readonly broken: readonly RuleId[];
}

const none: readonly never[] = [];
const nowhere: Followed = { next: none, broken: none };
const breaks = (broken: readonly RuleId[]): Followed => ({ next: [], broken });

/**
 * @param tellsHands whether rules of the hands alone are reported: in the walk of all slices only by the one that follows
 *   nothing else, so that each is told once; in the search for a way always, whatever else is followed there
 */
export function follow(
  station: Station,
  names: readonly string[],
  node: Node,
  edge: Edge,
  here: Here,
  others: Iterable<number>,
  tellsHands: boolean,
): Followed {
  const hands = station.hands.at(here.hands);
  const isGloved = hands.hands === "glovedClean" || hands.hands === "glovedSoiled";
  if (edge.needs === "gloves" && !isGloved) return nowhere;
  if (edge.needs === "noGloves" && isGloved) return nowhere;
  if (edge.waitsForClocks && isWet(station, names, here)) return nowhere;
  if (edge.endsFlow && hands.hands === "bare") return breaks(tellsHands ? ["handsAfterGloves"] : []);
  if (edge.endsFlow && hands.due === "gloves") return breaks(tellsHands ? ["damagedOrSoiledGlovesChanged"] : []);
  const sharps = names.indexOf(sharpsName);
  if (edge.sharps !== null && sharps >= 0) {
    const out = areOut(station.sharps.at(here.things[sharps] as number));
    if (out !== (edge.sharps === "out")) return nowhere;
  }
  if (edge.backToWork && sharps >= 0) {
    const broken = atWork(station.sharps.at(here.things[sharps] as number), isGloved);
    if (broken.length > 0) return breaks(broken);
  }
  if (node.step === null && edge.effect === null && edge.move === null) {
    const ended = flowEnding(station, names, node, edge, here, tellsHands);
    if (ended !== null) return breaks(ended);
  }
  if (edge.move?.kind === "close") return closing(station, names, here, tellsHands);
  const done =
    edge.effect === null
      ? passing(station, names, edge, here)
      : acting(station, names, node, edge, here, others, tellsHands);
  const counts = edge.move?.kind === "done" && edge.move.step.kind === "count";
  const counted = counts ? counting(station, names, done) : done;
  return edge.endsStep && edge.move?.kind === "done" ? settled(station, names, counted) : counted;
}

const isWet = (station: Station, names: readonly string[], here: Here): boolean =>
  names.some((n, i) => n !== sharpsName && station.things.at(here.things[i] as number).wetness === "wet");

function closing(station: Station, names: readonly string[], here: Here, tellsHands: boolean): Followed {
  const onHands = tellsHands ? handsAtClose(station.hands.at(here.hands)) : [];
  const onThings = names.flatMap((name, i) => {
    const at = here.things[i] as number;
    return name === sharpsName
      ? sharpsAtClose(station.sharps.at(at))
      : thingAtClose(station.things.at(at), station.thingOf(name).item);
  });
  return breaksOr([...onHands, ...onThings], here);
}

const breaksOr = (broken: readonly RuleId[], here: Here): Followed =>
  broken.length > 0 ? breaks(broken) : { next: [here], broken };

/** The hands after what is told, where the sharps are not followed; null where it cannot be told with these hands. */
export function toldTo(station: Station, edge: Edge, hands: number): number | null {
  const { hands: now } = station.hands.at(hands);
  const isGloved = now === "glovedClean" || now === "glovedSoiled";
  if ((edge.needs === "gloves" && !isGloved) || (edge.needs === "noGloves" && isGloved)) return null;
  return edge.makesDue ? station.madeDue(hands, edge.makesDue, edge.tears) : hands;
}

/** A flow is over: the client may be gone, or nothing more is to be tattooed. Null where nothing is wrong with that. */
function flowEnding(
  station: Station,
  names: readonly string[],
  node: Node,
  edge: Edge,
  here: Here,
  tellsHands: boolean,
): readonly RuleId[] | null {
  if (node.event === "stopEarly" && edge.backToWork) return tellsHands ? ["stopMeansStop"] : [];
  const isSpilt = names.some((n, i) => n !== sharpsName && station.isSpilt(here.things[i] as number));
  if (node.list === "resuming" && edge.backToWork && isSpilt) return ["bloodiedOut"];
  const isOpen = names.some((n, i) => n !== sharpsName && station.liesOpen(n, here.things[i] as number));
  return node.event === "clientLeaves" && isOpen ? ["woundCovered"] : null;
}

/** The things after what is told. */
export function thingsTold(station: Station, names: readonly string[], edge: Edge, things: readonly number[]) {
  if (!edge.spills) return things;
  return things.map((thing, i) => {
    const name = names[i] as string;
    return name === sharpsName ? thing : station.afterAccident(name, thing);
  });
}

function passing(station: Station, names: readonly string[], edge: Edge, here: Here): Followed {
  if (!edge.makesDue) return { next: [here], broken: none };
  const things = thingsTold(station, names, edge, here.things);
  return { next: [{ things, hands: station.madeDue(here.hands, edge.makesDue, edge.tears) }], broken: none };
}

function acting(
  station: Station,
  names: readonly string[],
  node: Node,
  edge: Edge,
  here: Here,
  others: Iterable<number>,
  tellsHands: boolean,
): Followed {
  const effect = edge.effect;
  if (effect === null) return nowhere;
  const sharpsAt = names.indexOf(sharpsName);
  if (!isOnThing(effect)) {
    const judged = station.onHands(effect, here.hands);
    if (judged.broken.length > 0) return breaks(tellsHands ? judged.broken : []);
    const lying =
      sharpsAt >= 0 && effect.verb === "doff"
        ? leftLying(station.sharps.at(here.things[sharpsAt] as number), node.event)
        : [];
    return breaksOr(lying, { ...here, hands: judged.hands });
  }
  const watched = names.indexOf(effect.item);
  const broken: RuleId[] = [];
  const isSharp = station.isSharp(effect.item);
  // Everything watched is judged for itself, so that no rule hides behind another.
  if (sharpsAt >= 0 && node.stage === "breakdown") {
    broken.push(...beforeSharps(station.sharps.at(here.things[sharpsAt] as number), effect, isSharp));
  }
  let met = here.things;
  if (effect.verb === "breakSkin") {
    if (names.some((n, i) => n !== sharpsName && station.standsPoured(here.things[i] as number))) {
      broken.push("bottlesAway");
    }
    if (station.skins.length === 0) return breaks(tellsHands ? [...broken, "skinPrepared"] : broken);
    met = skinsMet(station, names, here, effect, broken);
  } else if (effect.verb === "discard" && effect.into === "contaminated" && node.stage === "breakdown") {
    if (names.some((n, i) => n !== effect.item && isBagGone(station, n, here.things[i] as number))) {
      broken.push("bagLast");
    }
  }
  const moved =
    sharpsAt >= 0 && isSharp ? sharpMoves(station.sharps.at(here.things[sharpsAt] as number), effect) : null;
  if (moved) broken.push(...moved.broken);
  const next: Here[] = [];
  for (const thing of watched >= 0 ? [here.things[watched] as number] : others) {
    const judged = station.onThing(effect, here.hands, thing, node.stage);
    if (judged.broken.length > 0) {
      if (watched >= 0) broken.push(...judged.broken);
      continue;
    }
    if (judged.waits) continue;
    if (watched < 0 && moved === null) {
      if (!next.some((h) => h.hands === judged.hands)) next.push({ hands: judged.hands, things: met });
      continue;
    }
    for (const sharps of moved?.next ?? [null]) {
      const things = met.map((t, i) => {
        if (i === watched) return judged.thing;
        return i === sharpsAt && sharps !== null ? station.sharps.of(sharps) : t;
      });
      next.push({ hands: judged.hands, things });
    }
  }
  return broken.length > 0 ? breaks(broken) : { next, broken };
}

const isBagGone = (station: Station, name: string, thing: number): boolean =>
  name !== sharpsName && station.isBagGone(name, thing);

/** What becomes of the client's skin where it is watched; what would be wrong with that is added to what is broken. */
function skinsMet(
  station: Station,
  names: readonly string[],
  here: Here,
  { item }: ThingEffect,
  broken: RuleId[],
): readonly number[] {
  const by = station.thingOf(item).item;
  return here.things.map((thing, i) => {
    const name = names[i] as string;
    if (name === item || !station.skins.includes(name)) return thing;
    const judged = station.onSkin(thing, by);
    broken.push(...judged.broken);
    return judged.thing;
  });
}

/** A count that balances: every sharp opened lies in the container. */
function counting(station: Station, names: readonly string[], { next, broken }: Followed): Followed {
  const at = names.indexOf(sharpsName);
  if (at < 0) return { next, broken };
  const early = next.flatMap((h) => atCount(station.sharps.at(h.things[at] as number)));
  if (early.length > 0) return breaks([...broken, ...early]);
  const counted = next.map((h) => ({
    ...h,
    things: h.things.map((t, i) => (i === at ? station.sharps.of({ ...station.sharps.at(t), counted: true }) : t)),
  }));
  return { next: counted, broken };
}

/** The step is over: what it wetted is wet, what it wiped is clean. */
function settled(station: Station, names: readonly string[], { next, broken }: Followed): Followed {
  const after = (h: Here): Here => {
    const things = h.things.map((t, i) => {
      const name = names[i] as string;
      return name === sharpsName ? t : station.stepOver(name, t);
    });
    return things.every((t, i) => t === h.things[i]) ? h : { hands: h.hands, things };
  };
  return names.length === 0 ? { next, broken } : { next: next.map(after), broken };
}

/** Time may pass between steps: each watched surface that is wet may be done, seen wet throughout. */
export function waited(station: Station, names: readonly string[], here: Here): readonly Here[] {
  const later: Here[] = [];
  for (const [i, name] of names.entries()) {
    if (name === sharpsName) continue;
    const before = here.things[i] as number;
    const after = station.timeFull(name, before);
    if (after !== before) later.push({ ...here, things: here.things.map((t, k) => (k === i ? after : t)) });
  }
  return later.length === 0 ? none : later;
}

export const itemOf = (edge: Edge): string | null =>
  edge.effect !== null && isOnThing(edge.effect as ThingEffect) ? (edge.effect as ThingEffect).item : null;
