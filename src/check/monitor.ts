/**
 * A story told to the real chart. The companion's own `decide` answers; at each step that it asks for, hands and things
 * are read from what is so (the fold of its facts) and judged by the rules. What a checker suspects counts only if it
 * happens here.
 */
import { begin, decide, type SessionState } from "../../machines/session/decide";
import type { SessionEvent } from "../../machines/session/vocabulary";
import type { SessionFact } from "../session/fact";
import type { EventId, Protocol, Step } from "../session/protocol";
import type { SessionInput } from "../session/sessionInput";
import { flowHere, stepHere, type World } from "../session/world";
import {
  afterAccident,
  type HandState,
  isBagGone,
  isOnThing,
  judgeHands,
  judgeSkin,
  judgeThing,
  liesOpen,
  originOf,
  type Stage,
  standsPoured,
  stepOver,
  type ThingState,
  timeFull,
} from "./conduct";
import { type RuleId, ruleOf } from "./rules";
import { beforeSharps, leftLying, type SharpsState } from "./sharps";
import { SharpsTally } from "./sharpsTally";
import { Station } from "./slice";

/** A session of the protocol as the prepare screen hands it over, with nothing out of date and nothing carried over. */
export const sessionOf = (protocol: Protocol): SessionInput => ({
  protocol,
  labels: Object.fromEntries(protocol.products.map((p) => [p.id, { ...p.label, expiry: null }])),
  lots: [],
  station: "Check",
  artist: "Check",
  clientReference: "C-000",
  address: "station",
  language: "en",
  zone: "UTC",
  brisk: false,
  carriedOver: [],
});

/** Hands and one thing's effect, as judged on the real chart's own state. */
export interface Touched {
  readonly item: string | null;
  readonly hands: HandState;
}

/** What a thing remembers beside the facts. */
type Kept = Pick<ThingState, "treated" | "poured" | "bared" | "spilt">;
const asAtStart: Kept = { treated: false, poured: false, bared: false, spilt: false };
const keptOf = ({ treated, poured, bared, spilt }: ThingState): Kept => ({ treated, poured, bared, spilt });

/** More than any flow needs; a chart that takes longer is stuck. */
export const patience = 400;

export class Monitor {
  state: SessionState;
  readonly station: Station;
  readonly touched: Touched[] = [];
  readonly events: SessionEvent[] = [];
  readonly facts: SessionFact[] = [];
  /** What hands and things remember beside the facts. */
  private worked = false;
  private due: HandState["due"] = "nothing";
  private readonly kept = new Map<string, Kept>();
  readonly input: SessionInput;

  constructor(protocol: Protocol, like?: Monitor) {
    this.input = like?.input ?? sessionOf(protocol);
    this.station = like?.station ?? new Station(protocol);
    this.state = like?.state ?? begin(this.input);
    if (!like) this.tell({ type: "session.begin", today: "2026-01-01" });
  }

  /** The same session, to go on from in another way. What was told so far stays with the first. */
  copy(): Monitor {
    const made = new Monitor(this.input.protocol, this);
    made.worked = this.worked;
    made.due = this.due;
    for (const [id, kept] of this.kept) made.kept.set(id, kept);
    return made;
  }

  get world(): World {
    return this.state.context.world;
  }

  hands(): HandState {
    const { hands, handsSoiledBy } = this.world.station;
    return { hands, soiledBy: originOf(handsSoiledBy), worked: this.worked, due: this.due };
  }

  thing(id: string): ThingState {
    const item = this.world.station.items[id];
    if (!item) throw new Error(`No item ${id}.`);
    const clock = this.world.clocks[id];
    const kept = this.kept.get(id) ?? asAtStart;
    const wetness = clock === undefined ? "none" : clock.state === "ready" ? "done" : "wet";
    return { ...item, soiledBy: originOf(item.soiledBy), wetness, pending: "none", ...kept };
  }

  sharps(): SharpsState {
    const { opened, binned, parked, counted } = this.world.sharps;
    const few = (n: number) => Math.min(2, Math.max(0, n)) as 0 | 1 | 2;
    return {
      used: few(opened - binned - parked),
      parked: few(parked),
      everOpened: opened > 0,
      counted: counted === "balanced",
    };
  }

  tell(event: SessionEvent): readonly SessionFact[] {
    const { next, facts } = decide(this.state, event);
    this.state = next;
    this.facts.push(...facts);
    if (event.type !== "time.witnessed") this.events.push(event);
    return facts;
  }

  /** The step that the companion asks for, judged before it is done: what it would break. Hands and things after it. */
  judge(step: Step): { broken: RuleId[]; hands: HandState; things: Map<string, ThingState>; touched: Touched[] } {
    let hands = this.hands();
    const things = new Map<string, ThingState>();
    const touched: Touched[] = [];
    const broken: RuleId[] = [];
    const stage = this.stage();
    const sharps = new SharpsTally(this.world.sharps);
    const isSharp = (id: string): boolean => this.station.isSharp(id);
    for (const effect of step.effects) {
      if (!isOnThing(effect)) {
        const judged = judgeHands(hands, effect);
        if (effect.verb === "doff") broken.push(...leftLying(sharps.state(), flowHere(this.world)?.event ?? null));
        broken.push(...judged.broken);
        hands = judged.hands;
        touched.push({ item: null, hands });
        continue;
      }
      const { item: id } = effect;
      if (stage === "breakdown") broken.push(...beforeSharps(sharps.state(), effect, isSharp(id)));
      if (isSharp(id)) broken.push(...sharps.moves(effect));
      const now = (name: string): ThingState => things.get(name) ?? this.thing(name);
      if (effect.verb === "discard" && effect.into === "contaminated" && stage === "breakdown") {
        const gone = [...this.station.about].some(([name, { item }]) => name !== id && isBagGone(now(name), item));
        if (gone) broken.push("bagLast");
      }
      if (effect.verb === "breakSkin" && this.station.skins.length === 0) broken.push("skinPrepared");
      if (effect.verb === "breakSkin" && [...this.station.about.keys()].some((name) => standsPoured(now(name)))) {
        broken.push("bottlesAway");
      }
      const judged = judgeThing(hands, now(id), effect, this.station.thingOf(id), stage);
      broken.push(...judged.broken);
      hands = judged.hands;
      for (const skin of effect.verb === "breakSkin" ? this.station.skins.filter((s) => s !== id) : []) {
        const met = judgeSkin(now(skin), this.station.thingOf(effect.item).item);
        broken.push(...met.broken);
        things.set(skin, met.thing);
      }
      things.set(id, judged.thing);
      touched.push({ item: id, hands });
    }
    if (step.kind === "count" && sharps.out() > 0) broken.push("sharpsCounted");
    for (const [id, state] of things) things.set(id, stepOver(state, this.station.thingOf(id)));
    return { broken: [...new Set(broken)], hands, things, touched };
  }

  private stage(): Stage {
    const { phase, flows, place } = this.world;
    if (phase === "setUp") return "setUp";
    return flows.length === 0 && place?.list === "breakdown" ? "breakdown" : "late";
  }

  /** An accident at work. */
  spill(): void {
    for (const [id, { item }] of this.station.about) this.kept.set(id, keptOf(afterAccident(this.thing(id), item)));
  }

  /** Something that lay there with blood on it when the accident came lies there still. */
  hasSpilt(): boolean {
    return [...this.kept.values()].some(({ spilt }) => spilt);
  }

  /** Something that lies open where the client was tattooed. */
  hasOpenWound(): boolean {
    return [...this.station.about].some(([id, { item }]) => liesOpen(this.thing(id), item));
  }

  /** Does the step as asked: waits out the clocks, confirms the count. @returns whether the chart went past it. */
  perform(step: Step): boolean {
    const after = this.judge(step);
    this.waitFor(step.effects.flatMap((e) => (e.verb === "wipe" ? [e.item] : [])));
    const isCount = step.kind === "count";
    const facts = isCount
      ? this.tell({ type: "sharps.counted", inContainer: this.world.sharps.opened })
      : this.tell({ type: "step.done" });
    if (!facts.some((f) => f.type === "v1.StepDone" && f.step === step.id)) return false;
    this.worked = after.hands.worked;
    this.due = after.hands.due;
    for (const [id, thing] of after.things) this.kept.set(id, keptOf(thing));
    this.touched.push(...after.touched);
    return true;
  }

  /** Lets time pass, wet throughout, re-applying when asked and attesting at the end. */
  waitFor(surfaces: readonly string[]): void {
    for (const surface of surfaces) {
      for (let i = 0; i < patience; i += 1) {
        const clock = this.world.clocks[surface];
        if (!clock || clock.state === "ready") break;
        if (clock.state === "timeUp") this.tell({ type: "answer.yes", surface });
        else if (clock.reapplyAsked || clock.state === "dry") this.tell({ type: "surface.applied", surface });
        else this.tell({ type: "time.witnessed", elapsedMs: 5_000 });
      }
      const about = this.station.thingOf(surface);
      if (about.label?.afterwards === "airDry" && !this.world.clocks[surface]) {
        this.kept.set(surface, keptOf(timeFull({ ...this.thing(surface), wetness: "wet" }, about)));
      }
    }
  }

  /** A report without a name: asked for one, the artist says no to each. */
  report(event: EventId): boolean {
    const hadFlow = this.input.protocol.events.some((f) => f.event === event && f.steps.length > 0);
    this.tell({ type: "event.reported", event });
    for (let i = 0; i < patience && this.state.matches({ conversation: "naming" }); i += 1) {
      this.tell({ type: "answer.no" });
    }
    return hadFlow;
  }

  makeDue(due: "gloves" | "hands"): void {
    this.due = due;
  }

  here(): Step | null {
    return stepHere(this.input, this.world);
  }
}

/** Findings of the station among facts, by the rule that they break. */
export const brokenIn = (facts: readonly SessionFact[]): RuleId[] =>
  facts.flatMap((f) => (f.type === "v1.Deviation" ? (ruleOf(f.code) ?? []) : []));
