/**
 * Written after the rules, so that each rule of the catalogue is broken by a mutant: the frozen operators (operators.ts)
 * break these only together with another rule that is met first. They count for nothing in the rate.
 */
import { eachEffect, isHygiene, isOnly, type Mutant, placesIn, replaced, withEffects, without } from "./edit";
import type { Operator } from "./operators";

export const laterOperators: readonly Operator[] = [
  {
    id: "glovesOverGloves",
    words: "fresh gloves go over the old ones, without hand hygiene",
    mutants: (p) =>
      placesIn(p).flatMap((place) =>
        place.steps.flatMap((step, at): Mutant[] => {
          if (!isOnly(step, "doff") || !isHygiene(place.steps[at + 1]) || !isOnly(place.steps[at + 2], "don"))
            return [];
          return [{ what: `${place.name}.${step.id}`, protocol: place.with(without(place.steps, at, at + 1)) }];
        }),
      ),
  },
  {
    id: "sharpsNeitherBinnedNorCounted",
    words: "the breakdown forgets the sharps altogether",
    mutants: (p) => [
      {
        what: "breakdown",
        protocol: {
          ...p,
          breakdown: p.breakdown.filter(
            (s) => s.kind !== "count" && !s.effects.some((e) => e.verb === "discard" && e.into === "sharps"),
          ),
        },
      },
    ],
  },
  {
    id: "usedAfterTagOut",
    words: "a thing is taken out of use, and used afterwards",
    mutants: (p) =>
      p.items
        .filter((i) => i.use === "reusable" && i.role !== "sharp")
        .flatMap(({ id }): Mutant[] => {
          const at = p.setUp.findIndex((s) => s.effects.some((e) => e.verb === "cover" && e.item === id));
          const step = p.setUp[at];
          if (!step) return [];
          const setUp = replaced(p.setUp, at, withEffects(step, [{ verb: "tagOut", item: id }, ...step.effects]));
          return [{ what: `setUp: ${id}`, protocol: { ...p, setUp } }];
        }),
  },
  {
    id: "criticalLeft",
    words: "a critical thing that was used is left where it lies",
    mutants: (p) =>
      eachEffect(
        p,
        (e, _s, { name }) =>
          name === "breakdown" &&
          e.verb === "discard" &&
          e.into === "reprocess" &&
          p.items.find((i) => i.id === e.item)?.spaulding === "critical",
      ),
  },
];
