/**
 * Everywhere the walk can stand, and how it goes on from there: a node before each effect of each step, in the lists, in
 * each event's flow at work, and in each short flow told in the middle of those. README.md says what is walked and what
 * is judged without walking.
 */

import { type Effect, type EventId, listNames, type Protocol, type Step } from "../session/protocol";
import { resumingSteps } from "../session/resumingSteps";
import { mayComeNext, ordersOf } from "../turnaround/breakdown/orders";
import type { Stage } from "./conduct";

/** Told, asked for or done; what a story is made of. */
export type Move =
  | { readonly kind: "done"; readonly step: Step }
  | { readonly kind: "skipped"; readonly step: Step }
  | { readonly kind: "event"; readonly event: EventId }
  | { readonly kind: "finish" }
  | { readonly kind: "exposure" }
  | { readonly kind: "close" };

export interface Edge {
  readonly to: number;
  /** Done to the hands or a thing on the way. */
  readonly effect: Effect | null;
  readonly move: Move | null;
  /** The step is over: what it wetted and wiped takes hold. */
  readonly endsStep: boolean;
  /** What an event presupposes of the hands. */
  readonly needs: "gloves" | "noGloves" | null;
  /** Gloves are to be changed, or hands washed again, before anything else; a torn glove is soiled besides. */
  readonly makesDue: "gloves" | "hands" | null;
  readonly tears: boolean;
  /** An accident at work: what lies open and bloody may have been spilt into. */
  readonly spills: boolean;
  /** A flow ends here: bare hands or gloves that are due may not go on. */
  readonly endsFlow: boolean;
  /** At work again, gloved: a needle is in use. */
  readonly backToWork: boolean;
  /** Passed only with a sharp out of the container, or only with none. */
  readonly sharps: "out" | "none" | null;
  /** Told, and nothing else: no effect, no step, no work gone back to, and no close. An accident may spill. */
  readonly isTold: boolean;
  /** Passed only when no surface is still wet under its clock. */
  readonly waitsForClocks: boolean;
}

export interface Node {
  readonly id: number;
  /** The step whose effects follow; null at the end of a list, at work and at the close. */
  readonly step: Step | null;
  readonly list: string;
  readonly event: EventId | null;
  /** Between steps: told events, the passing of time and accidents come here. */
  readonly isBetween: boolean;
  readonly stage: Stage;
  readonly out: Edge[];
}

export interface Graph {
  readonly nodes: readonly Node[];
  readonly start: number;
  readonly close: number;
}

const plain = {
  effect: null,
  move: null,
  endsStep: false,
  needs: null,
  sharps: null,
  makesDue: null,
  tears: false,
  spills: false,
  endsFlow: false,
  waitsForClocks: false,
  backToWork: false,
  isTold: false,
} as const;

/** After these, gloves are changed before anything else. */
const wantGloves: ReadonlySet<EventId> = new Set(["freshGloves", "tornGlove", "tornBarrier", "dropped", "touched"]);
/** The client was away, and so perhaps was the artist: hands are washed again (WHO 2009, before touching a client). */
export const dueAfter = (event: EventId): "gloves" | "hands" | null => {
  if (event === "clientReturns") return "hands";
  return wantGloves.has(event) ? "gloves" : null;
};
const anyHands: ReadonlySet<EventId> = new Set(["stopEarly", "note"]);

const stageOf = (list: (typeof listNames)[number]): Stage => (list === "setUp" || list === "breakdown" ? list : "late");
/** A flow or a resuming in the breakdown takes nothing apart itself. */
const within = ({ stage }: Node): Stage => (stage === "setUp" ? "setUp" : "late");

interface Stretch {
  readonly list: string;
  readonly event: EventId | null;
  readonly stage: Stage;
}

/** @param slips false leaves out what is told in the middle of lists and flows: a small part of the whole, to look in first */
export function graphOf(protocol: Protocol, slips = true): Graph {
  const nodes: Node[] = [];
  const node = (at: Stretch, step: Step | null, isBetween: boolean): Node => {
    const made: Node = { id: nodes.length, step, isBetween, out: [], ...at };
    nodes.push(made);
    return made;
  };
  const join = (from: Node, to: Node, more: Partial<Edge> = {}) => {
    const backToWork = to.list === "work";
    const isTold = (more.move?.kind === "event" || more.move?.kind === "exposure") && !backToWork;
    from.out.push({ ...plain, to: to.id, backToWork, isTold, ...more });
  };

  /** A step from where it may be done to where it is done, or left out. */
  const through = (at: Stretch, step: Step, from: Node, to: Node): void => {
    const move: Move = { kind: "done", step };
    let here = from;
    for (const [k, effect] of step.effects.entries()) {
      const last = k === step.effects.length - 1;
      const next = last ? to : node(at, step, false);
      join(here, next, { effect, ...(last ? { move, endsStep: true } : {}) });
      here = next;
    }
    if (step.effects.length === 0) join(from, to, { move, endsStep: true });
    if (step.skippable && step.effects.length > 0) join(from, to, { move: { kind: "skipped", step } });
  };

  /** The steps one behind the other; returns the node before each, and the end. */
  const stretch = (at: Stretch, steps: readonly Step[]): Node[] => {
    const before = steps.map((step) => node(at, step, true));
    const end = node(at, null, true);
    for (const [i, step] of steps.entries()) through(at, step, before[i] as Node, before[i + 1] ?? end);
    return [...before, end];
  };

  /** The breakdown in every order that the plan may choose: a node for each set of steps that may be done at a moment. */
  const everyOrder = (at: Stretch): Node[] => {
    const orders = ordersOf(protocol);
    const nameOf = (done: ReadonlySet<number>): string => [...done].sort((a, b) => a - b).join(" ");
    const none: ReadonlySet<number> = new Set();
    const found = new Map([[nameOf(none), { done: none, node: node(at, orders.steps[0] ?? null, true) }]]);
    for (const { done, node: from } of found.values()) {
      const may = mayComeNext(orders, done);
      for (const next of may) {
        const step = orders.steps[next] as Step;
        const after = new Set([...done, next]);
        const name = nameOf(after);
        const to = found.get(name)?.node ?? node(at, null, true);
        found.set(name, { done: after, node: to });
        // One thing at most is met from a node, so each step that may come next begins at a node of its own.
        const begins = may.length === 1 ? from : node(at, step, false);
        if (begins !== from) join(from, begins);
        through(at, step, begins, to);
      }
    }
    return [...found.values()].map((f) => f.node);
  };

  const lists = Object.fromEntries(
    listNames.map((list) => {
      const at = { list, event: null, stage: stageOf(list) };
      return [list, list === "breakdown" ? everyOrder(at) : stretch(at, protocol[list])];
    }),
  ) as Record<(typeof listNames)[number], Node[]>;
  const work = node({ list: "work", event: null, stage: "late" }, null, true);
  const close = node({ list: "closed", event: null, stage: "breakdown" }, null, false);
  const first = (list: Node[]): Node => list[0] as Node;
  const end = (list: Node[]): Node => list.at(-1) as Node;

  join(end(lists.setUp), work, { waitsForClocks: true });
  join(work, first(lists.dressing), { move: { kind: "finish" } });
  join(end(lists.dressing), first(lists.breakdown));
  join(end(lists.breakdown), close, { move: { kind: "close" }, waitsForClocks: true });
  join(end(lists.resuming), work, { endsFlow: true });

  const flows = protocol.events.filter((f) => f.steps.length > 0);
  const atWork = new Map<EventId, Node[]>();
  for (const { event, steps, onwards } of flows) {
    const made = stretch({ list: event, event, stage: "late" }, steps);
    atWork.set(event, made);
    join(end(made), onwards === "dressing" ? first(lists.dressing) : work, { endsFlow: onwards === "continue" });
  }
  const told = (event: EventId): Partial<Edge> => ({
    move: { kind: "event", event },
    needs: anyHands.has(event) ? null : event === "clientReturns" ? "noGloves" : "gloves",
    makesDue: dueAfter(event),
    tears: event === "tornGlove",
  });
  for (const { event } of flows) join(work, first(atWork.get(event) as Node[]), told(event));
  for (const [event, made] of atWork) {
    for (const at of made.slice(0, -1)) if (wantGloves.has(event)) join(at, first(made), told(event));
  }

  // An accident at work, wherever in a flow: gloves off first, whatever was being done.
  const accident: Partial<Edge> = { move: { kind: "exposure" }, makesDue: "gloves", spills: true };
  const isWork = (n: Node) => n === work || n.list === "resuming" || atWork.has(n.list as EventId);
  /** At work, in whatever flow, and while resuming from one that came there: the whole list, from its beginning. */
  const hurtAtWork = () => {
    for (const n of nodes) if (n.isBetween && isWork(n)) join(n, first(lists.resuming), accident);
  };

  const graph = { nodes, start: first(lists.setUp).id, close: close.id };
  if (!slips) {
    hurtAtWork();
    return graph;
  }

  // Told in the middle of a list or of another flow. Flows that do the same to hands and things are walked as one.
  const doing = (steps: readonly Step[], list: string): Step[] =>
    steps.filter((s) => !s.atWork && !(s.beforeBreakdown && list === "breakdown") && s.effects.length > 0);
  const kindsOf = (list: string): ReadonlyMap<string, readonly EventId[]> => {
    const kinds = new Map<string, EventId[]>();
    for (const { event, steps } of flows) {
      if (!wantGloves.has(event)) continue;
      const sign = JSON.stringify(doing(steps, list).map((s) => [s.skippable, s.effects]));
      kinds.set(sign, [...(kinds.get(sign) ?? []), event]);
    }
    return kinds;
  };
  const [inBreakdown, before] = [kindsOf("breakdown"), kindsOf("setUp")];
  /** The short flows of slips, told at a node and ending there; a torn glove comes to the same flow with soiled gloves. */
  const slipsAt = (base: Node): { readonly node: Node; readonly endsGloved: boolean }[] =>
    [...(base.list === "breakdown" ? inBreakdown : before).values()].flatMap((alike) => {
      const events = alike.filter((e) => e !== base.event);
      const untorn = events.find((e) => e !== "tornGlove");
      const flow = flows.find((f) => f.event === events[0]);
      const steps = doing(flow?.steps ?? [], base.list);
      const ways = [
        ...(untorn !== undefined && steps.length > 0 ? [untorn] : []),
        ...(events.includes("tornGlove") ? (["tornGlove"] as const) : []),
      ];
      const [event] = ways;
      if (event === undefined) return [];
      const made = stretch({ list: base.list, event, stage: within(base) }, steps);
      for (const way of ways) join(base, first(made), told(way));
      join(end(made), base, { endsFlow: true });
      const endsGloved = steps.some((s) => s.effects.some((e) => e.verb === "don"));
      return made.slice(0, -1).map((node) => ({ node, endsGloved }));
    });
  const slipsOn = new Map<Node, ReturnType<typeof slipsAt>>();
  const bases = [...Object.values(lists), ...atWork.values()].flatMap((l) => l.slice(0, -1));
  for (const base of bases) slipsOn.set(base, slipsAt(base));

  hurtAtWork();

  // An accident while the station is built or taken apart, resumed.
  for (const list of ["setUp", "dressing", "breakdown"] as const) {
    for (const base of lists[list].slice(0, -1)) {
      const resumed = (gloved: boolean, sharpsOut: boolean): Node[] => {
        const steps = resumingSteps(protocol, { list, gloved, sharpsOut }).filter((s) => s.effects.length > 0);
        if (steps.length === 0) return [];
        const made = stretch({ list, event: null, stage: within(base) }, steps);
        join(end(made), base, { endsFlow: true });
        return made.slice(0, -1);
      };
      const [out, gloved] = [resumed(true, true), resumed(true, false)];
      const [bareOut, bare] = [resumed(false, true), resumed(false, false)];
      const hurt = (from: Node, made: Node[], sharps: Edge["sharps"], needs: Edge["needs"]): void => {
        const makesDue = made === bare ? "hands" : "gloves";
        if (made.length > 0) join(from, first(made), { move: { kind: "exposure" }, makesDue, sharps, needs });
      };
      const hurtGloved = (from: Node, needs: Edge["needs"]): void => {
        hurt(from, out, "out", needs);
        hurt(from, gloved, "none", needs);
      };
      const slips = slipsOn.get(base) ?? [];
      for (const from of [base, ...slips.flatMap((s) => (s.endsGloved ? [] : [s.node]))]) {
        hurtGloved(from, "gloves");
        hurt(from, bare, "none", "noGloves");
        hurt(from, bareOut, "out", "noGloves");
      }
      // In a slip's flow that ends gloved, and so does the resuming.
      for (const from of slips.flatMap((s) => (s.endsGloved ? [s.node] : []))) hurtGloved(from, null);
      // Again while resuming, or in the flow of a slip there: it begins anew. Bare hands tell no slip of gloves.
      const anew = (made: Node[]): Node[] => [...made, ...made.flatMap(slipsAt).map((s) => s.node)];
      for (const from of anew(gloved)) hurtGloved(from, null);
      for (const from of anew(out)) hurt(from, out, null, null);
      for (const from of anew(bareOut)) hurt(from, bareOut, null, null);
      for (const from of bare) hurt(from, bare, "none", null);
    }
  }

  return graph;
}
