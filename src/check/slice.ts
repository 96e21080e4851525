/**
 * What is followed exactly in one slice: the hands, and up to three watched things (an item, or the sharps). States are
 * numbered once, and what an effect does to hands and a thing is worked out once, so that a walk is looking up.
 */
import { productFor } from "../../machines/session/lookUp";
import type { Effect, Item, Protocol } from "../session/protocol";
import { isSkin } from "../session/skin";
import { isGloved } from "../session/station";
import {
  afterAccident,
  canBeSpiltInto,
  type HandState,
  isBagGone,
  isOnThing,
  type Judged,
  judgeHands,
  judgeSkin,
  judgeThing,
  liesOpen,
  type Stage,
  stages,
  standsPoured,
  stepOver,
  type Thing,
  type ThingEffect,
  type ThingState,
  thingAtStart,
  timeFull,
} from "./conduct";
import type { RuleId } from "./rules";
import { type SharpsState, sharpsAtStart } from "./sharps";

/** Numbers for values that are equal when they read the same. */
class Numbered<T> {
  readonly values: T[] = [];
  private readonly ids = new Map<string, number>();
  of(value: T): number {
    const key = JSON.stringify(value);
    const known = this.ids.get(key);
    if (known !== undefined) return known;
    this.ids.set(key, this.values.length);
    this.values.push(value);
    return this.values.length - 1;
  }
  at(id: number): T {
    return this.values[id] as T;
  }
}

export interface Outcome {
  readonly hands: number;
  readonly thing: number;
  readonly broken: readonly RuleId[];
  readonly waits: boolean;
}

export const sharpsName = "the sharps";

export class Station {
  readonly hands = new Numbered<HandState>();
  readonly things = new Numbered<ThingState>();
  readonly sharps = new Numbered<SharpsState>();
  readonly about: ReadonlyMap<string, Thing>;
  /** Where the client is tattooed; a protocol that names no such place never prepares it. */
  readonly skins: readonly string[];
  private readonly done = new Map<Effect, Map<number, Outcome>>();
  private readonly ofSkin = new Map<number, { readonly thing: number; readonly broken: readonly RuleId[] }>();
  private readonly due = new Map<number, number>();
  private readonly over = new Map<string, Map<number, number>>();
  private readonly full = new Map<string, Map<number, number>>();
  private readonly spillable: ReadonlySet<string>;
  private readonly accidents = new Map<string, Map<number, number>>();

  constructor(protocol: Protocol) {
    const label = (item: Item) => {
      const product = productFor(protocol, item.id);
      return protocol.products.find((p) => p.id === product)?.label ?? null;
    };
    this.about = new Map(protocol.items.map((item) => [item.id, { item, label: label(item) }]));
    this.spillable = new Set(protocol.items.filter(canBeSpiltInto).map(({ id }) => id));
    this.skins = protocol.items.filter(isSkin).map(({ id }) => id);
  }

  thingOf(id: string): Thing {
    return this.about.get(id) as Thing;
  }

  isSharp(id: string): boolean {
    return this.thingOf(id).item.role === "sharp";
  }

  startOf(name: string): number {
    return name === sharpsName ? this.sharps.of(sharpsAtStart) : this.things.of(thingAtStart(this.thingOf(name).item));
  }

  onHands(effect: Effect, hands: number): Outcome {
    return this.remembered(effect, hands * 2, () => {
      if (isOnThing(effect)) throw new Error("An effect on a thing is judged with the thing.");
      const judged = judgeHands(this.hands.at(hands), effect);
      return { hands: this.hands.of(judged.hands), thing: 0, broken: judged.broken, waits: false };
    });
  }

  onThing(effect: ThingEffect, hands: number, thing: number, stage: Stage): Outcome {
    return this.remembered(effect, (thing * 4096 + hands) * 3 + stages.indexOf(stage), () => {
      const judged: Judged = judgeThing(
        this.hands.at(hands),
        this.things.at(thing),
        effect,
        this.thingOf(effect.item),
        stage,
      );
      return { ...judged, hands: this.hands.of(judged.hands), thing: this.things.of(judged.thing) };
    });
  }

  /** Skin, as it is broken with another thing. */
  onSkin(thing: number, by: Item): { readonly thing: number; readonly broken: readonly RuleId[] } {
    const key = thing * 2 + (by.role === "sharp" ? 1 : 0);
    const before = this.ofSkin.get(key);
    if (before) return before;
    const judged = judgeSkin(this.things.at(thing), by);
    const made = { thing: this.things.of(judged.thing), broken: judged.broken };
    this.ofSkin.set(key, made);
    return made;
  }

  private remembered(effect: Effect, key: number, work: () => Outcome): Outcome {
    let known = this.done.get(effect);
    if (!known) {
      known = new Map();
      this.done.set(effect, known);
    }
    const before = known.get(key);
    if (before) return before;
    const made = work();
    known.set(key, made);
    return made;
  }

  /** Gloves that are due to be changed, or hands to be washed again; torn gloves are soiled besides. */
  madeDue(hands: number, due: "gloves" | "hands", tears: boolean): number {
    const key = hands * 4 + (tears ? 1 : 0) + (due === "hands" ? 2 : 0);
    const before = this.due.get(key);
    if (before !== undefined) return before;
    const h = this.hands.at(hands);
    const soiled = tears && isGloved(h.hands) ? ("glovedSoiled" as const) : h.hands;
    const made = this.hands.of({ ...h, hands: soiled, due });
    this.due.set(key, made);
    return made;
  }

  stepOver(name: string, thing: number): number {
    return this.mapped(this.over, name, thing, stepOver);
  }

  timeFull(name: string, thing: number): number {
    return this.mapped(this.full, name, thing, timeFull);
  }

  private mapped(
    memory: Map<string, Map<number, number>>,
    name: string,
    thing: number,
    change: (state: ThingState, about: Thing) => ThingState,
  ): number {
    let known = memory.get(name);
    if (!known) {
      known = new Map();
      memory.set(name, known);
    }
    const before = known.get(thing);
    if (before !== undefined) return before;
    const made = this.things.of(change(this.things.at(thing), this.thingOf(name)));
    known.set(thing, made);
    return made;
  }

  standsPoured(thing: number): boolean {
    return standsPoured(this.things.at(thing));
  }

  afterAccident(name: string, thing: number): number {
    if (!this.spillable.has(name)) return thing;
    return this.mapped(this.accidents, name, thing, (state, { item }) => afterAccident(state, item));
  }

  isSpilt(thing: number): boolean {
    return this.things.at(thing).spilt;
  }

  liesOpen(name: string, thing: number): boolean {
    return liesOpen(this.things.at(thing), this.thingOf(name).item);
  }

  isBagGone(name: string, thing: number): boolean {
    return isBagGone(this.things.at(thing), this.thingOf(name).item);
  }
}
