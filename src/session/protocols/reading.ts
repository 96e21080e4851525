/** Questions that the tests of the bundled protocols put to a list of steps. */
import { type Effect, type EventId, eventIds, type Protocol, type Step } from "../protocol";
import { bundledProtocols } from "./index";

export const effectsIn = (steps: readonly Step[]): Effect[] => steps.flatMap((s) => s.effects);
export const does = (step: Step, ...verbs: Effect["verb"][]): boolean =>
  step.effects.some((e) => verbs.includes(e.verb));
export const flowOf = (p: Protocol, event: EventId): Step[] => p.events.find((f) => f.event === event)?.steps ?? [];
export const itemsWith = (effects: readonly Effect[], verb: Effect["verb"]): string[] =>
  effects.flatMap((e) => (e.verb === verb && "item" in e ? [e.item] : []));

/** What happens, then the way home. A client who returns has left before. */
export const straight = (p: Protocol, ...meanwhile: Step[]): Step[] => [
  ...p.setUp,
  ...meanwhile,
  ...p.dressing,
  ...p.breakdown,
];
export const happening = (p: Protocol, event: EventId): Step[] =>
  event === "clientReturns" ? [...flowOf(p, "clientLeaves"), ...flowOf(p, event)] : flowOf(p, event);

export const protocols = bundledProtocols.map((protocol) => ({ id: protocol.id, protocol }));
export const withEvents = protocols.flatMap(({ id, protocol }) => eventIds.map((event) => ({ id, protocol, event })));
