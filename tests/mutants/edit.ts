/** Small cuts and moves in a protocol, for the operators that break it. Nothing is changed in place. */
import { type Effect, type EventFlow, listNames, type Protocol, type Step } from "../../src/session/protocol";

/** A list of steps and how the protocol looks with another list in its place. */
export interface Place {
  readonly name: string;
  readonly steps: readonly Step[];
  readonly with: (steps: readonly Step[]) => Protocol;
}

export function placesIn(protocol: Protocol): Place[] {
  const lists = listNames.map((name) => ({
    name: name as string,
    steps: protocol[name],
    with: (steps: readonly Step[]): Protocol => ({ ...protocol, [name]: [...steps] }),
  }));
  const flows = protocol.events.map((flow, at) => ({
    name: flow.event as string,
    steps: flow.steps,
    with: (steps: readonly Step[]): Protocol => {
      const changed: EventFlow = { ...flow, steps: [...steps] };
      return { ...protocol, events: protocol.events.map((f, i) => (i === at ? changed : f)) };
    },
  }));
  return [...lists, ...flows];
}

export const verbs = (step: Step): Effect["verb"][] => step.effects.map((e) => e.verb);
export const isHygiene = (step: Step | undefined): boolean =>
  step !== undefined && step.effects.length > 0 && verbs(step).every((v) => v === "wash" || v === "rub");
export const isOnly = (step: Step | undefined, verb: Effect["verb"]): boolean =>
  step !== undefined && step.effects.length === 1 && step.effects[0]?.verb === verb;

export const without = <T>(list: readonly T[], ...gone: number[]): T[] => list.filter((_, i) => !gone.includes(i));
export const moved = <T>(list: readonly T[], from: number, to: number): T[] => {
  const [taken] = list.slice(from, from + 1);
  const rest = without(list, from);
  return taken === undefined ? rest : [...rest.slice(0, to), taken, ...rest.slice(to)];
};
export const replaced = <T>(list: readonly T[], at: number, by: T): T[] => list.map((x, i) => (i === at ? by : x));

export const withEffects = (step: Step, effects: readonly Effect[]): Step => ({ ...step, effects: [...effects] });

/** Every effect that passes the test, with the protocol as it is once another effect, or none, stands in its place. */
export function eachEffect(
  protocol: Protocol,
  test: (effect: Effect, step: Step, place: Place) => boolean,
  instead: (effect: Effect) => readonly Effect[] = () => [],
): Mutant[] {
  return placesIn(protocol).flatMap((place) =>
    place.steps.flatMap((step, s) =>
      step.effects.flatMap((effect, e): Mutant[] => {
        if (!test(effect, step, place)) return [];
        const effects = [...step.effects.slice(0, e), ...instead(effect), ...step.effects.slice(e + 1)];
        return [
          {
            what: `${place.name}.${step.id}: ${effect.verb} ${"item" in effect ? effect.item : ""}`,
            protocol: place.with(replaced(place.steps, s, withEffects(step, effects))),
          },
        ];
      }),
    ),
  );
}

/** Every step that passes the test, with the protocol as it is once its list is another. */
export function eachStep(
  protocol: Protocol,
  test: (step: Step, at: number, place: Place) => boolean,
  change: (steps: readonly Step[], at: number) => readonly Step[],
): Mutant[] {
  return placesIn(protocol).flatMap((place) =>
    place.steps.flatMap((step, at): Mutant[] =>
      test(step, at, place)
        ? [{ what: `${place.name}.${step.id}`, protocol: place.with(change(place.steps, at)) }]
        : [],
    ),
  );
}

export interface Mutant {
  readonly what: string;
  readonly protocol: Protocol;
}
