/** What is so now: the fold of the session's facts. Shown, spoken and guarded from here; nothing else is truth. */
import { carriedOverSteps, withAdded } from "./addedSteps";
import type { DeviationCode, DiscrepancyReason, Phase, SkipReason } from "./fact";
import type { EventId, ListName, Step } from "./protocol";
import { resumingSteps } from "./resumingSteps";
import { currentRules } from "./rules";
import type { SessionInput } from "./sessionInput";
import { type Kinds, kindsOf, type Station, stationAtStart } from "./station";
import type { WetClock } from "./wetClock";

/** Where we stand in a list; `group` steps from `index` on are read together for one answer. */
export interface Place {
  readonly list: ListName;
  readonly index: number;
  readonly group: number;
}

/** A procedure event on top of the work, with a short flow of its own. Flows lie on one another; the last is walked. */
export interface Flow {
  readonly event: EventId;
  readonly index: number;
}

export interface Sharps {
  readonly opened: number;
  readonly binned: number;
  readonly parked: number;
  /** How the last count came out; null until counted, and again after any sharp moves. */
  readonly counted: "balanced" | "differs" | null;
  readonly recounts: number;
  readonly discrepancy: DiscrepancyReason | null;
}

export interface Deviation {
  readonly code: DeviationCode;
  readonly item: string | null;
  readonly step: string | null;
}

export interface ShownLot {
  readonly item: string;
  readonly lot: string;
  readonly expiry: string | null;
}

export type Exposure = "none" | "firstAid" | "resuming" | "ended";

export interface World {
  /** Facts folded so far. */
  readonly count: number;
  readonly cause: number;
  readonly today: string;
  readonly phase: Phase;
  /** Null while working: during the procedure there is no list to walk. */
  readonly place: Place | null;
  /** The order in which the breakdown is walked, where it was planned; null while it is the written one. */
  readonly order: readonly string[] | null;
  readonly flows: readonly Flow[];
  readonly exposure: Exposure;
  /** Where the phase's list stood when the exposure came; walked again from there after resuming. */
  readonly placeBefore: Place | null;
  /** How hands and sharps were when the exposure came; what resuming asks for depends on it. */
  readonly accident: { readonly gloved: boolean; readonly sharpsOut: boolean };
  readonly paused: boolean;
  readonly brisk: boolean;
  readonly earLost: boolean;
  readonly station: Station;
  readonly clocks: Readonly<Record<string, WetClock>>;
  readonly sharps: Sharps;
  readonly lots: Readonly<Record<string, { readonly lot: string; readonly expiry: string | null }>>;
  /** Soiled by a slip, and not treated by the protocol's own breakdown: added to it. */
  readonly added: readonly string[];
  /** What the camera read last and nobody has confirmed yet. */
  readonly lotShown: ShownLot | null;
  readonly done: readonly string[];
  readonly skipped: readonly { readonly step: string; readonly reason: SkipReason }[];
  readonly deviations: readonly Deviation[];
  readonly witnessedMs: number;
  /** How many times nobody watched. */
  readonly gaps: number;
  /** What was so before the last report, for one undo. */
  readonly before: World | null;
  readonly beforeCause: number | null;
}

/** @param rules the version that the record names; a new session's otherwise */
export function worldAtStart(input: SessionInput, rules: string = currentRules): World {
  return {
    count: 0,
    cause: -1,
    today: "0000-00-00",
    phase: "setUp",
    place: null,
    order: null,
    flows: [],
    exposure: "none",
    placeBefore: null,
    accident: { gloved: false, sharpsOut: false },
    paused: false,
    brisk: input.brisk,
    earLost: false,
    station: stationAtStart(input.protocol.items, input.carriedOver, rules),
    clocks: {},
    sharps: { opened: 0, binned: 0, parked: 0, counted: null, recounts: 0, discrepancy: null },
    lots: Object.fromEntries(input.lots.map((l) => [l.item, { lot: l.lot, expiry: l.expiry }])),
    added: [],
    lotShown: null,
    done: [],
    skipped: [],
    deviations: [],
    witnessedMs: 0,
    gaps: 0,
    before: null,
    beforeCause: null,
  };
}

export const flowHere = (world: World): Flow | null => world.flows.at(-1) ?? null;

/** The steps of the list being walked: a flow's before the phase's own. Empty while working. */
export function stepsHere(input: SessionInput, world: World): readonly Step[] {
  const flow = flowHere(world);
  if (flow) {
    const steps = input.protocol.events.find((f) => f.event === flow.event)?.steps ?? [];
    const isAtWork = cameOnTheWork(world);
    return steps.filter((s) => (isAtWork || !s.atWork) && !(s.beforeBreakdown && world.phase === "breakdown"));
  }
  return world.place ? listSteps(input, world, world.place.list) : [];
}

/** A list as it is walked: with what was left unready before, in the planned order, and with what slips added. */
function listSteps(input: SessionInput, world: World, list: ListName): readonly Step[] {
  if (list === "setUp") return setUpOf(input);
  if (list === "resuming") return resumingOf(input, world);
  return list === "breakdown"
    ? withAdded(input.protocol, breakdownOf(input, world), world.added, world.station.asBefore15)
    : input.protocol[list];
}

/** The protocol's own steps of the breakdown, in the planned order where there is one. */
export const breakdownOf = (input: SessionInput, { order }: Pick<World, "order">): readonly Step[] =>
  order === null ? input.protocol.breakdown : inOrder(input, order);

const stepsByOrder = new WeakMap<readonly string[], readonly Step[]>();

function inOrder(input: SessionInput, order: readonly string[]): readonly Step[] {
  const known = stepsByOrder.get(order);
  if (known) return known;
  const made = order.flatMap((id) => stepById(input, id) ?? []);
  stepsByOrder.set(order, made);
  return made;
}

const resumings = new WeakMap<SessionInput, Map<string, readonly Step[]>>();

function resumingOf(input: SessionInput, { placeBefore, accident, station }: World): readonly Step[] {
  const list = placeBefore?.list ?? null;
  const { asBefore14 = false } = station;
  const key = `${list} ${accident.gloved} ${accident.sharpsOut} ${asBefore14}`;
  const known = resumings.get(input) ?? new Map<string, readonly Step[]>();
  resumings.set(input, known);
  const made = known.get(key) ?? resumingSteps(input.protocol, { list, ...accident }, asBefore14);
  known.set(key, made);
  return made;
}

const setUps = new WeakMap<SessionInput, readonly Step[]>();

function setUpOf(input: SessionInput): readonly Step[] {
  const known = setUps.get(input);
  if (known) return known;
  const made = [...carriedOverSteps(input.protocol, input.carriedOver), ...input.protocol.setUp];
  setUps.set(input, made);
  return made;
}

/** The flow lies straight on the work: no other flow and no list is waiting under it. */
const cameOnTheWork = ({ phase, place, flows }: World): boolean =>
  phase === "procedure" && place === null && flows.length === 1;

/** Gloves go on in a flow that is being walked: cut short, it would have ended gloved. */
export const endsGloved = (input: SessionInput, { flows }: World): boolean =>
  flows.some(({ event }) =>
    input.protocol.events.find((f) => f.event === event)?.steps.some((s) => s.effects.some((e) => e.verb === "don")),
  );

export const indexHere = (world: World): number => flowHere(world)?.index ?? world.place?.index ?? 0;

/** The step being asked for now; null while working, at a list's end, in first aid, or closed. */
export function stepHere(input: SessionInput, world: World): Step | null {
  if (world.exposure === "firstAid") return null;
  return stepsHere(input, world)[indexHere(world)] ?? null;
}

/** The steps read together now, for one answer. */
export function groupHere(input: SessionInput, world: World): readonly Step[] {
  const step = stepHere(input, world);
  if (!step) return [];
  if (flowHere(world) || !world.place) return [step];
  return stepsHere(input, world).slice(world.place.index, world.place.index + world.place.group);
}

export const inUse = (sharps: Sharps): number => sharps.opened - sharps.binned - sharps.parked;

const kindsByInput = new WeakMap<SessionInput, Kinds>();

/** Items by id; made once for each session. */
export function kindsIn(input: SessionInput): Kinds {
  const known = kindsByInput.get(input);
  if (known) return known;
  const made = kindsOf(input.protocol.items);
  kindsByInput.set(input, made);
  return made;
}

const stepsByInput = new WeakMap<SessionInput, ReadonlyMap<string, Step>>();

/** A step by its name, the added ones among them where the walk stands at them. */
export const stepIn = (input: SessionInput, world: World, id: string): Step | undefined =>
  stepsHere(input, world).find((s) => s.id === id) ?? stepById(input, id);

export function stepById(input: SessionInput, id: string): Step | undefined {
  let known = stepsByInput.get(input);
  if (!known) {
    const p = input.protocol;
    const all = [...setUpOf(input), ...p.dressing, ...p.breakdown, ...p.resuming, ...p.events.flatMap((f) => f.steps)];
    known = new Map(all.map((s) => [s.id, s]));
    stepsByInput.set(input, known);
  }
  return known.get(id);
}
