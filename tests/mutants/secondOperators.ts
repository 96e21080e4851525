/**
 * A second dozen of ways in which a written procedure goes wrong, none of them among the first (operators.ts). They were
 * written down and committed before it was known which of them the rules catch, and are not changed to suit those.
 */
import type { Effect, Item, Protocol, Step } from "../../src/session/protocol";
import { eachEffect, eachStep, isHygiene, type Mutant, moved, placesIn, replaced, withEffects } from "./edit";
import type { Operator } from "./operators";

const kind = (p: Protocol, id: string): Item | undefined => p.items.find((i) => i.id === id);
const hasThing = (step: Step): boolean => step.effects.some((e) => "item" in e);
const isSharp = (p: Protocol, e: Effect): boolean => "item" in e && kind(p, e.item)?.role === "sharp";

/** One more effect at the end of the first step behind `at` that does something to a thing. */
function behind(steps: readonly Step[], at: number, effect: Effect): readonly Step[] | null {
  const to = steps.findIndex((s, i) => i > at && hasThing(s));
  const step = steps[to];
  return step ? replaced(steps, to, withEffects(step, [...step.effects, effect])) : null;
}

/** For each effect that passes the test, its list with one more effect in a later step. */
const laterToo = (
  p: Protocol,
  test: (effect: Effect, list: string) => boolean,
  more: (item: string) => Effect,
): Mutant[] =>
  placesIn(p).flatMap((place) =>
    place.steps.flatMap((step, at) =>
      step.effects.flatMap((effect): Mutant[] => {
        if (!("item" in effect) || !test(effect, place.name)) return [];
        const steps = behind(place.steps, at, more(effect.item));
        return steps ? [{ what: `${place.name}.${step.id}: ${effect.item}`, protocol: place.with(steps) }] : [];
      }),
    ),
  );

export const secondOperators: readonly Operator[] = [
  {
    id: "guardMayBeLeftOut",
    words: "a step that does something to a thing may be left out",
    mutants: (p) =>
      eachStep(
        p,
        (s) => !s.skippable && hasThing(s),
        (steps, at) => steps.map((s, i) => (i === at ? { ...s, skippable: true } : s)),
      ),
  },
  {
    id: "oneOfAllBinned",
    words: "one sharp goes into the container where all should",
    mutants: (p) =>
      eachEffect(
        p,
        (e) => e.verb === "discard" && e.all,
        (e) => [{ ...e, all: false } as Effect],
      ),
  },
  {
    id: "notParked",
    words: "a needle that is still needed is not parked, or not taken up again",
    mutants: (p) => eachEffect(p, (e) => e.verb === "park" || e.verb === "unpark"),
  },
  {
    id: "wetAndWipedAtOnce",
    words: "a surface is wetted and wiped in one step, so that no time is kept",
    mutants: (p) =>
      placesIn(p).flatMap((place) => {
        const all = place.steps.flatMap((s) => s.effects);
        const wiped = (item: string) => all.some((e) => e.verb === "wipe" && e.item === item);
        const wets = all.flatMap((e) => (e.verb === "apply" && wiped(e.item) ? [e.item] : []));
        return [...new Set(wets)].map((item): Mutant => {
          const steps = place.steps.map((s) =>
            withEffects(
              s,
              s.effects.flatMap((e): Effect[] => {
                if (!("item" in e) || e.item !== item) return [e];
                if (e.verb === "wipe") return [];
                return e.verb === "apply" ? [e, { verb: "wipe", item }] : [e];
              }),
            ),
          );
          return { what: `${place.name}: ${item}`, protocol: place.with(steps) };
        });
      }),
  },
  {
    id: "touchedWhileWet",
    words: "a wet surface is touched in the next step, with the gloves that wetted it",
    mutants: (p) =>
      laterToo(
        p,
        (e) => e.verb === "apply",
        (item) => ({ verb: "touch", item }),
      ),
  },
  {
    id: "thrownAndUsedAgain",
    words: "a thing that was thrown away is taken up again",
    mutants: (p) =>
      laterToo(
        p,
        (e) => e.verb === "discard" && e.into !== "reprocess" && !isSharp(p, e),
        (item) => ({ verb: "touch", item }),
      ),
  },
  {
    id: "lastGlovesTooSoon",
    words: "the last gloves come off, and hands are washed, before the last thing is handled",
    mutants: (p) => {
      const last = p.breakdown.findLastIndex(hasThing);
      const hands = p.breakdown.findLastIndex((s) => isHygiene(s));
      return last >= 0 && hands > last
        ? [{ what: "breakdown", protocol: { ...p, breakdown: moved(p.breakdown, last, hands) } }]
        : [];
    },
  },
  {
    id: "leftOutAfterAccident",
    words: "after an accident one thing is not thrown out, uncovered, cleaned or covered",
    mutants: (p) =>
      eachEffect(
        p,
        (e, _s, { name }) =>
          name === "resuming" && "item" in e && !isSharp(p, e) && e.verb !== "apply" && e.verb !== "wipe",
      ),
  },
  {
    id: "notSterile",
    words: "a thing that goes through skin comes clean, not sterile",
    mutants: (p) =>
      p.items.flatMap((item, at): Mutant[] =>
        item.spaulding === "critical" && item.starts.condition === "sterile"
          ? [
              {
                what: item.id,
                protocol: {
                  ...p,
                  items: p.items.map((i, n) =>
                    n === at ? { ...i, starts: { ...i.starts, condition: "clean" as const } } : i,
                  ),
                },
              },
            ]
          : [],
      ),
  },
  {
    id: "workGoesOn",
    words: "the work goes on where it should stop: the client is unwell, or the session ends early",
    mutants: (p) =>
      p.events.flatMap((flow, at): Mutant[] =>
        flow.onwards === "dressing"
          ? [
              {
                what: flow.event,
                protocol: {
                  ...p,
                  events: p.events.map((f, n) => (n === at ? { ...f, onwards: "continue" as const } : f)),
                },
              },
            ]
          : [],
      ),
  },
  {
    id: "bagOutTooSoon",
    words: "the waste bag is closed before all the waste is in it",
    mutants: (p) =>
      p.items
        .filter((i) => i.role === "container" && i.use === "singleUse")
        .flatMap(({ id }): Mutant[] => {
          const first = p.breakdown.findIndex((s) =>
            s.effects.some((e) => e.verb === "discard" && e.into === "contaminated"),
          );
          const goes = p.breakdown.flatMap((s) => s.effects).find((e) => e.verb === "discard" && e.item === id);
          if (first < 0 || !goes) return [];
          const breakdown = p.breakdown.map((s, i) =>
            withEffects(s, [...(i === first ? [goes] : []), ...s.effects.filter((e) => e !== goes)]),
          );
          return [{ what: `breakdown: ${id}`, protocol: { ...p, breakdown } }];
        }),
  },
  {
    id: "usedCupFilled",
    words: "more ink is poured into a cup that was used",
    mutants: (p) =>
      eachEffect(
        p,
        (e, _s, { name }) => name === "moreInk" && e.verb === "touch" && e.item === "spareCups",
        () => [{ verb: "touch", item: "cups" }],
      ),
  },
];
