/** Where a step stands: one of the walked lists, or the flow of an event. Both are lists of steps to whoever edits them. */
import { type EventId, everyStep, type ListName, listNames, type Protocol, type Step } from "../session/protocol";

/** Names of lists and of events do not meet, so that one word says which list is meant. */
export type Place = ListName | EventId;

export const isList = (place: Place): place is ListName => (listNames as readonly string[]).includes(place);

/** In the order of a session: set-up, what can happen at work, dressing, breakdown, resuming. */
export function placesOf(protocol: Protocol): readonly Place[] {
  return ["setUp", ...protocol.events.map(({ event }) => event), "dressing", "breakdown", "resuming"];
}

export function stepsAt(protocol: Protocol, place: Place): readonly Step[] {
  if (isList(place)) return protocol[place];
  return protocol.events.find(({ event }) => event === place)?.steps ?? [];
}

export function withSteps(protocol: Protocol, place: Place, steps: readonly Step[]): Protocol {
  if (isList(place)) return { ...protocol, [place]: steps };
  const events = protocol.events.map((flow) => (flow.event === place ? { ...flow, steps: [...steps] } : flow));
  return { ...protocol, events };
}

export interface StepPlace {
  readonly place: Place;
  readonly at: number;
  readonly step: Step;
}

export function findStep(protocol: Protocol, id: string): StepPlace | null {
  for (const place of placesOf(protocol)) {
    const steps = stepsAt(protocol, place);
    const at = steps.findIndex((step) => step.id === id);
    const step = steps[at];
    if (step) return { place, at, step };
  }
  return null;
}

/** Every step changed by the same rule, wherever it stands. */
export function mapSteps(protocol: Protocol, change: (step: Step) => Step): Protocol {
  const { setUp, dressing, breakdown, resuming, events } = protocol;
  return {
    ...protocol,
    setUp: setUp.map(change),
    dressing: dressing.map(change),
    breakdown: breakdown.map(change),
    resuming: resuming.map(change),
    events: events.map((flow) => ({ ...flow, steps: flow.steps.map(change) })),
  };
}

export const stepIds = (protocol: Protocol): ReadonlySet<string> =>
  new Set(everyStep(protocol).map(({ step }) => step.id));
