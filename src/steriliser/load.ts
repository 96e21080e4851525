/**
 * Which load a class of cycle may carry (EN 13060, from memory): B takes all, N only naked solid instruments, S what its
 * maker states. A wrapped pack out of a class N cycle is refused: it dried wet, or was never reached.
 */
import { type Answer, answer, refuse } from "../sums/answer";

export const cycleClasses = ["B", "N", "S"] as const;
export type CycleClass = (typeof cycleClasses)[number];

export const loadKinds = ["naked-solid", "wrapped-solid", "naked-hollow", "wrapped-hollow", "porous"] as const;
export type LoadKind = (typeof loadKinds)[number];

/** @param statedByMaker kinds the maker names for a class S cycle; ignored for B and N. */
export function checkLoad(
  cycleClass: CycleClass,
  load: readonly LoadKind[],
  statedByMaker: readonly LoadKind[] = [],
): Answer<null, "load-not-for-class" | "empty-load"> {
  if (load.length === 0) return refuse("empty-load", (say) => say.steriliser.nothingLoaded);
  const allowed: readonly LoadKind[] = { B: loadKinds, N: ["naked-solid"] as const, S: statedByMaker }[cycleClass];
  const wrong = load.find((kind) => !allowed.includes(kind));
  if (wrong === undefined) return answer(null);
  return refuse("load-not-for-class", ({ steriliser: say }) => {
    const why = cycleClass === "S" ? say.makerSilent : say.nakedSolidOnly;
    return say.notInClass(say.loads[wrong], cycleClass, why);
  });
}
