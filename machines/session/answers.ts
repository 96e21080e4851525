/** What a yes, a no, a report without a name and an undo mean just now. Pure. */
import type { BareFact } from "../../src/session/fact";
import { type DiscrepancyReason, discrepancyReasons } from "../../src/session/fact";
import type { EventId } from "../../src/session/protocol";
import { isSkin } from "../../src/session/skin";
import { canBeTaggedOut } from "../../src/session/station";
import type { WetClock, WetState } from "../../src/session/wetClock";
import { groupHere, kindsIn, stepHere, type World } from "../../src/session/world";
import { surfacesOf } from "./lookUp";
import { mayTouch } from "./mayTouch";
import { stepsDone, surfaceApplied, surfaceWiped, type Told } from "./statements";

/** A report that lacks a name; the companion goes through the candidates. */
export interface Naming {
  readonly about: "applied" | "wiped" | "discrepancy" | "mayTouch" | "outOfUse" | EventId;
  readonly candidates: readonly string[];
  readonly at: number;
  /** Sprays are asked about by what was sprayed together: "lamp and chair?"; null where one item is meant. */
  readonly groups: readonly (readonly string[])[] | null;
}

/** What a spray could have been meant for; with more than one the companion asks. */
export type Sprays = readonly (readonly string[])[];

/** What has been asked aloud, so that a yes answers only that. */
export interface Asked {
  readonly about: "stillWet" | "stayedWet" | "reapply" | "wetAgain";
  readonly surfaces: readonly string[];
}

const inState = (world: World, ...states: WetState[]): WetClock[] =>
  Object.values(world.clocks).filter((c) => states.includes(c.state));

/** The clocks that a yes or no speaks of: those asked about, or the only one there is. */
export function questioned(world: World, asked: Asked | null, surface?: string): WetClock[] {
  const waiting = inState(world, "doubtful", "timeUp");
  if (surface !== undefined) return waiting.filter((c) => c.surface === surface);
  const heard = waiting.filter((c) => asked?.surfaces.includes(c.surface));
  if (heard.length > 0) return heard;
  return asked === null && waiting.length === 1 ? waiting : [];
}

export const yesTo = (clocks: readonly WetClock[]): BareFact[] =>
  clocks.map((c) => ({ type: c.state === "doubtful" ? "v1.WetClockTrusted" : "v1.WetClockReady", surface: c.surface }));

export const noTo = (clocks: readonly WetClock[]): BareFact[] =>
  clocks.map((c) => ({ type: "v1.WetClockDried", surface: c.surface }));

const wantsSpray = (clock: WetClock | undefined): boolean =>
  clock !== undefined &&
  (clock.state === "dry" || (clock.state === "counting" && (clock.reapplyAsked || clock.reapplyPlanned === true)));

const isSame = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((id) => b.includes(id));

/**
 * What a spray without a name may have been meant for: each question about spraying that still stands, the latest first,
 * all of them together, and what the step here sprays. One: it is that. More: it is asked, since a wrong guess would
 * call a surface wet that is not. None asked: the only clock it can be.
 */
export function spraysMeant(told: Told, asked: Sprays): Sprays {
  const { world } = told;
  const open = asked
    .map((surfaces) => surfaces.filter((id) => wantsSpray(world.clocks[id])))
    .filter((surfaces) => surfaces.length > 0)
    .toReversed();
  const all = [...new Set(open.flat())];
  const here = sprayedHere(told);
  const groups = [...open, all, here].filter((surfaces) => surfaces.length > 0);
  const distinct = groups.filter((surfaces, at) => groups.findIndex((other) => isSame(other, surfaces)) === at);
  return distinct.length > 0 ? distinct : onlyClock(world);
}

function onlyClock(world: World): Sprays {
  const wanting = Object.values(world.clocks).filter(wantsSpray);
  const clocks = wanting.length > 0 ? wanting : Object.values(world.clocks);
  return clocks.length === 1 ? [clocks.map((c) => c.surface)] : [];
}

/** What the step here sprays, or wipes and finds dry. */
const sprayedHere = (told: Told): readonly string[] => {
  const applies = hasEffectHere(told, "apply") ? effectsHere(told, "apply") : [];
  return applies.length > 0 ? applies : toBeWetHere(told);
};

const effectsHere = ({ input, world }: Told, verb: "apply" | "wipe"): string[] =>
  groupHere(input, world)
    .flatMap((s) => s.effects)
    .flatMap((e) => (e.verb === verb && "item" in e ? [e.item] : []));

/** These were sprayed: the step that sprays just these is done by it; else each clock starts or goes on. */
export function sprayed(told: Told, surfaces: readonly string[]): BareFact[] {
  const isStep = hasEffectHere(told, "apply") && isSame(effectsHere(told, "apply"), surfaces);
  return isStep ? stepsDone(told) : surfaces.flatMap((id) => surfaceApplied(told, id));
}

/** Surfaces that the steps here wipe and that no clock watches: a spray means them. */
export const toBeWetHere = ({ input, world }: Told): string[] =>
  groupHere(input, world)
    .flatMap((s) => s.effects)
    .flatMap((e) => {
      const isDry = e.verb === "wipe" && (world.clocks[e.item]?.state ?? "dry") === "dry";
      return isDry && world.station.items[e.item]?.at !== "taggedOut" ? [e.item] : [];
    });

export const hasEffectHere = ({ input, world }: Told, verb: "apply" | "wipe"): boolean =>
  groupHere(input, world).some((s) => s.effects.some((e) => e.verb === verb) && !world.done.includes(s.id));

export function namingOf(told: Told, about: Naming["about"]): Naming {
  const { protocol } = told.input;
  const running = Object.keys(told.world.clocks);
  const one = { about, at: 0, groups: null };
  if (about === "discrepancy") return { ...one, candidates: discrepancyReasons };
  if (about === "mayTouch") return { ...one, candidates: touchable(told) };
  if (about === "outOfUse") return { ...one, candidates: taggable(told) };
  if (about === "applied" || about === "wiped") {
    return { ...one, candidates: running.length > 0 ? running : surfacesOf(protocol) };
  }
  return { ...one, candidates: protocol.events.find((f) => f.event === about)?.asksItem ?? [] };
}

/** What may be asked about: what slips are asked about first, since the hand goes there; else all that is here. */
function touchable({ input: { protocol }, world }: Told): string[] {
  const here = (id: string): boolean => ["station", "away"].includes(world.station.items[id]?.at ?? "");
  const often = protocol.events.flatMap((f) => f.asksItem).filter(here);
  const all = protocol.items.filter((i) => !isSkin(i)).map((i) => i.id);
  return [...new Set(often.length > 0 ? often : all.filter(here))];
}

/** What may be taken out of use: of the things that the step here is about, else of all. */
export function taggable({ input, world }: Told): string[] {
  const may = (id: string): boolean => canBeTaggedOut(world.station, kindsIn(input), id);
  const here = groupHere(input, world).flatMap((s) => s.effects.flatMap((e) => ("item" in e ? [e.item] : [])));
  const ofStep = [...new Set(here)].filter(may);
  return ofStep.length > 0 ? ofStep : input.protocol.items.map((i) => i.id).filter(may);
}

const treats: ReadonlySet<string> = new Set(["uncover", "preClean", "apply", "wipe", "rinse"]);

/** The step here makes things ready: where that does not work out, one of them may have to go out of use. */
export const mayHaveToGo = ({ input, world }: Told): boolean =>
  groupHere(input, world).some((s) =>
    s.effects.some((e) => treats.has(e.verb) && "item" in e && canBeTaggedOut(world.station, kindsIn(input), e.item)),
  );

/** The question still stands: the walk is where it was told. */
export const isOffered = ({ input, world, offered }: Told & { readonly offered: string | null }): boolean =>
  offered !== null && stepHere(input, world)?.id === offered;

/** A no is a refusal with its reason; a yes states nothing. */
export function touchAsked(told: Told, item: string | null): BareFact[] {
  const answer = mayTouch(told, item);
  if (answer.may) return [];
  const known = item !== null && told.world.station.items[item] !== undefined;
  return [{ type: "v1.Refused", request: "may.touch", reason: answer.reason, item: known ? item : null }];
}

export const namingSprays = (told: Told, groups: Sprays): Naming =>
  groups.length > 0
    ? { about: "applied", candidates: [...new Set(groups.flat())], at: 0, groups }
    : namingOf(told, "applied");

export const choicesIn = ({ candidates, groups }: Naming): number => groups?.length ?? candidates.length;

/** The report with its name found; null means that nobody could name it, which is kept too. */
export function named(told: Told, naming: Naming, name: string | null): BareFact[] {
  switch (naming.about) {
    case "applied": {
      const group = naming.groups?.[naming.at];
      if (name === null) return [];
      return group ? sprayed(told, group) : surfaceApplied(told, name);
    }
    case "wiped":
      return name === null ? [] : surfaceWiped(told, name);
    case "mayTouch":
      return touchAsked(told, name);
    case "outOfUse":
      return name === null ? [] : [{ type: "v1.ItemOutOfUse", item: name }];
    case "discrepancy": {
      const reason = (name ?? "unexplained") as DiscrepancyReason;
      return [
        { type: "v1.SharpsDiscrepancy", reason },
        { type: "v1.Deviation", code: "sharpsMismatch", item: null, step: null },
      ];
    }
    default:
      return eventHappened(naming.about, name);
  }
}

const deviationOf: Partial<Record<EventId, "dropped" | "touchedUnplanned" | "barrierTorn" | "gloveTorn">> = {
  dropped: "dropped",
  touched: "touchedUnplanned",
  tornBarrier: "barrierTorn",
  tornGlove: "gloveTorn",
};

export function eventHappened(event: EventId, item: string | null): BareFact[] {
  const code = deviationOf[event];
  const reported: BareFact = { type: "v1.EventReported", event, item };
  return code ? [reported, { type: "v1.Deviation", code, item, step: null }] : [reported];
}

const handsRank = { glovedSoiled: 0, bare: 1, washed: 2, glovedClean: 2 } as const;
const clockRank = { dry: 0, doubtful: 1, counting: 2, timeUp: 3, ready: 4 } as const;

/** Would taking the last report back make the station look safer than it does now? Then it is read back first. */
export function looksSafer(now: World): boolean {
  const then = now.before;
  if (!then) return false;
  if (then.deviations.length < now.deviations.length) return true;
  if (then.sharps.opened - then.sharps.binned < now.sharps.opened - now.sharps.binned) return true;
  if (handsRank[then.station.hands] > handsRank[now.station.hands]) return true;
  const cleaner = Object.entries(then.station.items).some(([id, item]) => {
    const later = now.station.items[id];
    return later !== undefined && later.condition === "soiled" && item.condition !== "soiled";
  });
  const usable = Object.entries(then.station.items).some(
    ([id, item]) => item.at !== "taggedOut" && now.station.items[id]?.at === "taggedOut",
  );
  const fuller = Object.values(then.clocks).some((clock) => {
    const later = now.clocks[clock.surface];
    return later !== undefined && clockRank[clock.state] > clockRank[later.state];
  });
  return (
    cleaner ||
    usable ||
    fuller ||
    Object.values(then.clocks).some((c) => now.clocks[c.surface] === undefined && c.state !== "ready")
  );
}
