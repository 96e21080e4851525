/** Steps added, taken out, moved within a list or to another, and changed field by field. */
import type { Protocol, Step } from "../session/protocol";
import type { Part } from "./edit";
import { findStep, mapSteps, type Place, placesOf, stepsAt, withSteps } from "./place";

export type StepEdit =
  | { readonly do: "addStep"; readonly place: Place; readonly at: number; readonly step: Step }
  | { readonly do: "removeStep"; readonly step: string }
  /** `at` counts in the list as it is once the step has been taken out of it. */
  | { readonly do: "moveStep"; readonly step: string; readonly place: Place; readonly at: number }
  | { readonly do: "changeStep"; readonly step: string; readonly part: Part<Omit<Step, "effects">> };

export function editSteps(protocol: Protocol, edit: StepEdit): Protocol | string {
  if (edit.do === "addStep") {
    if (!placesOf(protocol).includes(edit.place)) return "$.events";
    return withSteps(protocol, edit.place, inserted(stepsAt(protocol, edit.place), edit.at, edit.step));
  }
  const found = findStep(protocol, edit.step);
  if (!found) return "$";
  if (edit.do === "changeStep") {
    return mapSteps(protocol, (step) => (step.id === edit.step ? ({ ...step, ...edit.part } as Step) : step));
  }
  const without = withSteps(
    protocol,
    found.place,
    stepsAt(protocol, found.place).filter(({ id }) => id !== edit.step),
  );
  if (edit.do === "removeStep") return without;
  if (!placesOf(protocol).includes(edit.place)) return "$.events";
  return withSteps(without, edit.place, inserted(stepsAt(without, edit.place), edit.at, found.step));
}

/** A place past either end is the end. */
export function inserted<T>(list: readonly T[], at: number, one: T): T[] {
  const place = Math.max(0, Math.min(list.length, Math.trunc(at)));
  return [...list.slice(0, place), one, ...list.slice(place)];
}
