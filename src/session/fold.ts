/**
 * Folds one fact into what is so. Pure, total and small: the chart decides, this only follows. The record's verifier
 * replays a session through the same function.
 */
import { makeReady, placeForAdded, treatedBy } from "./addedSteps";
import { put } from "./contact";
import type { FactOf, SessionFact } from "./fact";
import type { Effect, Step } from "./protocol";
import type { SessionInput } from "./sessionInput";
import { isSkin } from "./skin";
import { applyEffect, backInUse, barrierTorn, disinfected, fellDown, isGloved, meet, type Station } from "./station";
import { afterGap, dried, reapplied, restarted, started, trusted, type WetClock, witnessed } from "./wetClock";
import { breakdownOf, endsGloved, kindsIn, stepIn, stepsHere, type World, worldAtStart } from "./world";

/** Facts that one undo can take back; what follows from them goes with them. */
const reports: ReadonlySet<SessionFact["type"]> = new Set([
  "v1.StepDone",
  "v1.StepSkipped",
  "v1.ProblemReported",
  "v1.EventReported",
  "v1.WipedEarly",
  "v1.SurfaceWiped",
  "v1.WetClockReady",
  "v1.WetClockDried",
  "v1.WetClockReapplied",
  "v1.WetClockStarted",
  "v1.SharpsCounted",
  "v1.ItemOutOfUse",
  "v1.ItemBackInUse",
]);

export function fold(input: SessionInput, world: World, fact: SessionFact): World {
  const first = fact.cause !== world.cause;
  const credited = credit(world, fact.witnessedMs);
  const opensUndo = first && reports.has(fact.type);
  const ready: World = {
    ...credited,
    count: world.count + 1,
    cause: fact.cause,
    ...(opensUndo ? { before: stripped(credited), beforeCause: fact.cause } : {}),
  };
  return step(input, ready, fact);
}

/** One undo, one level: what is kept for it keeps nothing itself. */
const stripped = (world: World): World => ({ ...world, before: null, beforeCause: null });

export const foldAll = (input: SessionInput, facts: readonly SessionFact[], rules?: string): World =>
  facts.reduce((world, fact) => fold(input, world, fact), worldAtStart(input, rules));

const each = (clocks: World["clocks"], change: (c: WetClock) => WetClock): World["clocks"] =>
  Object.fromEntries(Object.entries(clocks).map(([id, clock]) => [id, change(clock)]));

/** Watched time, given to every clock that counts. */
export const credit = (world: World, ms: number): World =>
  ms === 0
    ? world
    : { ...world, witnessedMs: world.witnessedMs + ms, clocks: each(world.clocks, (c) => witnessed(c, ms)) };

const setClock = (world: World, surface: string, change: (c: WetClock) => WetClock): World => {
  const clock = world.clocks[surface];
  return clock ? { ...world, clocks: { ...world.clocks, [surface]: change(clock) } } : world;
};

const dropClock = (world: World, surface: string): World => {
  const { [surface]: _gone, ...clocks } = world.clocks;
  return { ...world, clocks };
};

const setStation = (world: World, station: Station): World => ({ ...world, station });

function step(input: SessionInput, world: World, fact: SessionFact): World {
  switch (fact.type) {
    case "v1.SessionBegan":
    case "v1.DayTurned":
      return { ...world, today: fact.today };
    case "v1.PhaseEntered": {
      const list = fact.phase === "procedure" || fact.phase === "closed" ? null : fact.phase;
      const place = list && { list, index: 0, group: 1 };
      return { ...world, phase: fact.phase, place, order: null, flows: [], before: null, beforeCause: null };
    }
    case "v1.PlanChosen":
      return { ...world, order: fact.order };
    case "v1.StepEntered":
      return stepEntered(world, fact);
    case "v1.StepDone":
      return stepDone(input, world, fact);
    case "v1.StepSkipped":
      return passed(
        input,
        {
          ...world,
          skipped: [...world.skipped, { step: fact.step, reason: fact.reason }],
        },
        fact.step,
      );
    case "v1.Deviation":
      return {
        ...world,
        station: outOfDateOnSkin(input, world.station, fact),
        deviations: [...world.deviations, { code: fact.code, item: fact.item, step: fact.step }],
      };

    case "v1.WetClockStarted": {
      const { surface, product, neededMs, reapplyWithinMs } = fact;
      return {
        ...world,
        clocks: { ...world.clocks, [surface]: started({ surface, product, neededMs, reapplyWithinMs }) },
      };
    }
    case "v1.ReapplyDue":
      return setClock(world, fact.surface, (c) => ({ ...c, reapplyAsked: true }));
    case "v1.ReapplyPlanned":
      return setClock(world, fact.surface, (c) => ({ ...c, reapplyPlanned: true }));
    case "v1.WetClockReapplied":
      return setClock(world, fact.surface, (c) => (c.state === "counting" ? reapplied(c) : restarted(c)));
    case "v1.WetClockLapsed":
    case "v1.WetClockDried":
      return setClock(world, fact.surface, dried);
    case "v1.WetClockTimeUp":
      return setClock(world, fact.surface, (c) => ({ ...c, state: "timeUp" }));
    case "v1.WetClockReady": {
      const product = world.clocks[fact.surface]?.product ?? "";
      if (input.labels[product]?.afterwards === "airDry") return surfaceDone(input, world, fact.surface);
      return setClock(world, fact.surface, (c) => ({ ...c, state: "ready" }));
    }
    case "v1.WetClockTrusted":
      return setClock(world, fact.surface, trusted);
    case "v1.WipedEarly":
      return setClock(world, fact.surface, dried);
    case "v1.SurfaceWiped":
      return surfaceDone(input, world, fact.surface);
    case "v1.GapSeen":
      return { ...world, gaps: world.gaps + 1, clocks: each(world.clocks, afterGap) };

    case "v1.EventReported":
      return eventReported(input, world, fact);
    case "v1.ItemOutOfUse":
      return effectDone(input, world, { verb: "tagOut", item: fact.item });
    case "v1.ItemBackInUse":
      return slipped(input, setStation(world, backInUse(world.station, fact.item)), fact.item);
    case "v1.FlowEnded":
      return { ...world, flows: world.flows.slice(0, -1) };
    case "v1.LotGiven":
      return {
        ...world,
        lots: { ...world.lots, [fact.item]: { lot: fact.lot, expiry: fact.expiry } },
        lotShown: null,
      };
    case "v1.LotShown":
      return { ...world, lotShown: { item: fact.item, lot: fact.lot, expiry: fact.expiry } };
    case "v1.SharpsCounted":
      return {
        ...world,
        sharps: { ...world.sharps, counted: fact.inContainer === fact.expected ? "balanced" : "differs" },
      };
    case "v1.RecountAsked":
      return { ...world, sharps: { ...world.sharps, counted: null, recounts: world.sharps.recounts + 1 } };
    case "v1.SharpsDiscrepancy":
      return { ...world, sharps: { ...world.sharps, discrepancy: fact.reason } };

    case "v1.ExposureReported":
      return exposed(input, world);
    case "v1.ExposureAnswered":
      return fact.choice === "resume"
        ? { ...world, exposure: "resuming", place: { list: "resuming", index: 0, group: 1 } }
        : world;
    case "v1.ExposureEnded":
      return {
        ...world,
        exposure: fact.outcome === "resumed" ? "none" : "ended",
        place: world.placeBefore,
        placeBefore: null,
      };

    case "v1.Paused":
      return { ...world, paused: true };
    case "v1.Resumed":
      return { ...world, paused: false };
    case "v1.BriskSet":
      return { ...world, brisk: fact.on };
    case "v1.EarLost":
      return { ...world, earLost: true };
    case "v1.EarBack":
      return { ...world, earLost: false };
    case "v1.Undone":
      return undone(world);
    case "v1.SessionClosed":
      return { ...world, phase: "closed", place: null, flows: [], before: null, beforeCause: null };
    case "v1.ProblemReported":
    case "v1.NoteKept":
    case "v1.Refused":
    case "v1.TimeWitnessed":
      return world;
  }
}

/**
 * The walk stands still where it was; a second accident while the first is being resumed keeps that place. Where a
 * flow that is cut short would have ended gloved, so does the resuming.
 */
function exposed(input: SessionInput, world: World): World {
  const interrupted = world.exposure === "firstAid" || world.exposure === "resuming";
  const placeBefore = interrupted ? world.placeBefore : world.place;
  const { opened, binned } = world.sharps;
  const { hands, asBefore12 } = world.station;
  const accident = interrupted
    ? { gloved: world.accident.gloved, sharpsOut: world.accident.sharpsOut || opened > binned }
    : { gloved: isGloved(hands) || (!asBefore12 && endsGloved(input, world)), sharpsOut: opened > binned };
  return {
    ...world,
    accident,
    exposure: "firstAid",
    placeBefore,
    flows: [],
    paused: false,
    before: null,
    beforeCause: null,
  };
}

function stepEntered(world: World, fact: FactOf<"v1.StepEntered">): World {
  if (fact.list === "flow") return atFlowIndex(world, fact.index);
  return { ...world, place: { list: fact.list, index: fact.index, group: fact.group } };
}

const atFlowIndex = (world: World, index: number): World => {
  const top = world.flows.at(-1);
  return top ? { ...world, flows: [...world.flows.slice(0, -1), { ...top, index }] } : world;
};

/**
 * A step's effects happen when it is reported done. Wet clocks start and end by facts of their own. A step of a phase
 * happens once: read again after `back` and answered again, it changes nothing. Steps of a flow happen each time.
 */
function stepDone(input: SessionInput, world: World, fact: FactOf<"v1.StepDone">): World {
  const done = stepIn(input, world, fact.step);
  if (!done) return world;
  const repeats = world.flows.length > 0 || world.place?.list === "resuming";
  if (!repeats && world.done.includes(fact.step)) return passed(input, world, fact.step);
  const noted = repeats ? world : { ...world, done: [...world.done, fact.step] };
  return passed(
    input,
    done.effects.reduce<World>((w, effect) => effectDone(input, w, effect), noted),
    fact.step,
  );
}

/** The walk stands behind the step, before the next is entered. */
function passed(input: SessionInput, world: World, step: string): World {
  const steps = stepsHere(input, world);
  const index = steps.findIndex((s) => s.id === step);
  if (index < 0) return world;
  if (world.flows.length > 0) return atFlowIndex(world, index + 1);
  const { place } = world;
  return place
    ? {
        ...world,
        place: { list: place.list, index: index + 1, group: Math.max(1, place.group - (index + 1 - place.index)) },
      }
    : world;
}

export function effectDone(input: SessionInput, world: World, effect: Effect): World {
  const { station } = applyEffect(world.station, effect, kindsIn(input));
  const spoilt = spoilsClock(world, effect) || cleansWet(world, effect) ? setClock(world, effect.item, dried) : world;
  // Out of use, nobody waits for it to be dry.
  const left = effect.verb === "tagOut" ? dropClock(spoilt, effect.item) : spoilt;
  return countSharp(input, setStation(left, station), effect);
}

/** An antiseptic past its date prepares nothing, whatever its step did. */
const outOfDateOnSkin = (input: SessionInput, station: Station, { code, item }: FactOf<"v1.Deviation">): Station =>
  code === "appliedOutOfDate" && item !== null && isSkin(kindsIn(input)[item])
    ? put(station, item, { preCleaned: false })
    : station;

const contacts: ReadonlySet<Effect["verb"]> = new Set(["touch", "cover", "uncover", "bring", "fill", "breakSkin"]);

/** A surface met by soiled gloves or hands under its clock, or after it, is soiled anew: the clock is worth nothing. */
export function spoilsClock(world: World, effect: Effect): effect is Effect & { item: string } {
  if (!("item" in effect) || !contacts.has(effect.verb)) return false;
  const { hands, handsSoiledBy, items, asBefore12 } = world.station;
  if (effect.verb === "uncover" && items[effect.item]?.barrier === "none" && !asBefore12) return false;
  return runs(world, effect.item) && (hands === "glovedSoiled" || (hands === "bare" && handsSoiledBy.length > 0));
}

/** Cleaned once more, it is no longer wet with what its clock counts. */
const cleansWet = (world: World, effect: Effect): effect is Effect & { item: string } =>
  effect.verb === "preClean" && runs(world, effect.item) && !world.station.asBefore12;

const runs = (world: World, surface: string): boolean => {
  const clock = world.clocks[surface];
  return clock !== undefined && clock.state !== "dry";
};

/** On the floor, or under a torn barrier, it is soiled whatever the gloves are. */
const soilsAlways = (event: string): boolean => event === "dropped" || event === "tornBarrier";

/**
 * The process of its class is what makes an item clean: a noncritical surface, disinfected. Critical items must be
 * sterilised, porous and single-use ones discarded; no wiping cleans those (Spaulding 1968; CDC 2008, Table 1).
 */
function surfaceDone(input: SessionInput, world: World, surface: string): World {
  const kind = kindsIn(input)[surface];
  const after = dropClock(world, surface);
  const canBeWiped = kind?.spaulding === "noncritical" && kind.use === "reusable" && !kind.porous;
  return canBeWiped ? setStation(after, disinfected(after.station, surface)) : after;
}

/** Sharps are counted from the opening of each to the container. Any sharp that moves makes an old count void. */
function countSharp(input: SessionInput, world: World, effect: Effect): World {
  if (!("item" in effect) || kindsIn(input)[effect.item]?.role !== "sharp") return world;
  const { sharps } = world;
  const used = sharps.opened - sharps.binned - sharps.parked;
  const moved = (change: Partial<World["sharps"]>): World => ({
    ...world,
    sharps: { ...sharps, ...change, counted: null },
  });
  switch (effect.verb) {
    case "open":
      return moved({ opened: sharps.opened + 1 });
    case "discard":
      // With none out there is nothing to move, and the count still stands.
      if (effect.all) return used + sharps.parked > 0 ? moved({ binned: sharps.opened, parked: 0 }) : world;
      if (used > 0) return moved({ binned: sharps.binned + 1 });
      return sharps.parked > 0 ? moved({ binned: sharps.binned + 1, parked: sharps.parked - 1 }) : world;
    case "park":
      return used > 0 ? moved({ parked: sharps.parked + 1 }) : world;
    case "unpark":
      return sharps.parked > 0 ? moved({ parked: sharps.parked - 1 }) : world;
    default:
      return world;
  }
}

/** What an event does at once, before its flow is walked. */
function eventReported(input: SessionInput, world: World, fact: FactOf<"v1.EventReported">): World {
  const hasFlow = input.protocol.events.some((f) => f.event === fact.event && f.steps.length > 0);
  const moved =
    fact.item === null
      ? world
      : slipped(input, setStation(world, happened(world.station, fact.event, fact.item)), fact.item);
  const spoilt =
    fact.item !== null &&
    ((soilsAlways(fact.event) && runs(world, fact.item)) || spoilsClock(world, { verb: "touch", item: fact.item }))
      ? setClock(moved, fact.item, dried)
      : moved;
  const torn: World =
    fact.event === "tornGlove"
      ? setStation(spoilt, { ...spoilt.station, hands: isGloved(spoilt.station.hands) ? "glovedSoiled" : "bare" })
      : spoilt;
  if (!hasFlow) return torn;
  const under = torn.flows.filter((f) => f.event !== fact.event);
  return { ...torn, flows: [...under, { event: fact.event, index: 0 }] };
}

/** What a slip soiled, and the rest of the breakdown would forget, is added to it, unless the place for that lies behind. */
function slipped(input: SessionInput, world: World, id: string): World {
  const item = world.station.items[id];
  const steps = breakdownOf(input, world);
  const at = placeForAdded(steps);
  const here = [world.place, world.placeBefore].find((p) => p?.list === "breakdown");
  const index = here?.index ?? 0;
  if (!item || at === null || index > at || world.added.includes(id)) return world;
  const isSoiled = item.condition === "soiled" || item.barrier === "soiledCover" || item.barrier === "torn";
  if (!isSoiled || item.at === "discarded" || item.at === "taggedOut") return world;
  if (isTreated(input, world, id, steps.slice(index))) return world;
  const added = { ...world, added: [...world.added, id] };
  // It is cleaned before it is wetted again: nothing counts until then.
  return world.station.asBefore15 ? added : dropClock(added, id);
}

function isTreated(input: SessionInput, world: World, id: string, ahead: readonly Step[]): boolean {
  if (world.station.asBefore15) return treatedBy(ahead).has(id);
  const wets = input.protocol.breakdown.flatMap((s) => s.effects).find((e) => e.verb === "apply" && e.item === id);
  const product = world.clocks[id]?.product ?? (wets?.verb === "apply" ? wets.product : "");
  return makeReady(ahead, {
    id,
    isCovered: world.station.items[id]?.barrier !== "none",
    isWet: world.clocks[id] !== undefined,
    label: input.labels[product] ?? input.protocol.products.find((p) => p.id === product)?.label,
  });
}

function happened(station: Station, event: string, item: string): Station {
  if (event === "dropped") return fellDown(station, item);
  if (event === "tornBarrier") return barrierTorn(station, item);
  if (event === "touched" || event === "photo") return meet(station, item);
  return station;
}

/** The last report never was. What was watched meanwhile still counts against every clock: gaps and drying above all. */
function undone(world: World): World {
  const { before } = world;
  if (!before) return world;
  const elapsed = world.witnessedMs - before.witnessedMs;
  const later = (clock: WetClock): WetClock => {
    const passed = witnessed(clock, elapsed);
    return world.gaps > before.gaps ? afterGap(passed) : passed;
  };
  return {
    ...before,
    clocks: each(before.clocks, later),
    count: world.count,
    cause: world.cause,
    witnessedMs: world.witnessedMs,
    gaps: world.gaps,
    today: world.today,
    earLost: world.earLost,
  };
}
