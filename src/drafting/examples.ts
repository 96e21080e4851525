/** Edits that somebody may make, sensible and not, for tests: each is made for the protocol as it stands then. */
import fc from "fast-check";
import { type EventId, eventIds, everyStep, type Protocol, WasteStream } from "../session/protocol";
import type { Edit } from "./edit";
import { effectWith, verbs } from "./editEffects";
import { newItem, newProduct, newStep } from "./fresh";
import { placesOf } from "./place";

export type MakeEdit = (protocol: Protocol) => Edit;

const words = fc.oneof(fc.string({ maxLength: 30 }), fc.constantFrom("", "x".repeat(241), "Wipe the lamp"));
const number = fc.oneof(fc.integer({ min: -5, max: 4000 }), fc.double(), fc.constant(Number.NaN));
const pick = fc.nat({ max: 400 });

const nth = <T>(list: readonly T[], at: number, otherwise: T): T => list[at % Math.max(1, list.length)] ?? otherwise;
const stepIn = (p: Protocol, at: number): string => nth(everyStep(p), at, undefined)?.step.id ?? "ghost";
const itemIn = (p: Protocol, at: number): string =>
  (at % 17 === 0 ? "ghost" : nth(p.items, at, undefined)?.id) ?? "ghost";
const productIn = (p: Protocol, at: number): string => nth(p.products, at, undefined)?.id ?? "ghost";

const forStep = (make: (step: string, p: Protocol, at: number) => Edit) =>
  pick.map(
    (at): MakeEdit =>
      (p) =>
        make(stepIn(p, at), p, at),
  );

export const anyEdit: fc.Arbitrary<MakeEdit> = fc.oneof(
  fc.tuple(words, words).map(
    ([en, es]): MakeEdit =>
      () => ({ do: "changeProtocol", part: { name: { en, es } } }),
  ),
  fc.tuple(pick, pick, words).map(
    ([list, at, text]): MakeEdit =>
      (p) => {
        return { do: "addStep", place: nth(placesOf(p), list, "setUp"), at, step: newStep(p, text || "New") };
      },
  ),
  forStep((step) => ({ do: "removeStep", step })),
  fc.tuple(pick, pick, pick).map(
    ([which, list, at]): MakeEdit =>
      (p) => {
        return { do: "moveStep", step: stepIn(p, which), place: nth(placesOf(p), list, "setUp"), at };
      },
  ),
  fc.tuple(pick, words, number).map(
    ([which, en, handsOnSec]): MakeEdit =>
      (p) => {
        return { do: "changeStep", step: stepIn(p, which), part: { say: { en }, handsOnSec } };
      },
  ),
  fc.tuple(pick, words).map(
    ([which, id]): MakeEdit =>
      (p) => {
        return {
          do: "changeStep",
          step: stepIn(p, which),
          part: { id, caution: undefined, atWork: true, beforeBreakdown: true, kind: "check" },
        };
      },
  ),
  fc.tuple(pick, fc.constantFrom(...verbs), pick).map(
    ([which, verb, item]): MakeEdit =>
      (p) => {
        const touch = { verb: "touch", item: itemIn(p, item) } as const;
        return { do: "addEffect", step: stepIn(p, which), effect: effectWith(verb, touch, p) ?? touch };
      },
  ),
  fc.tuple(pick, pick, fc.constantFrom(...WasteStream.options)).map(
    ([which, at, into]): MakeEdit =>
      (p) => {
        return {
          do: "setEffect",
          step: stepIn(p, which),
          at: at % 3,
          effect: { verb: "discard", item: itemIn(p, at), into, all: true },
        };
      },
  ),
  forStep((step, _, at) => ({ do: "moveEffect", step, at: at % 3, to: at % 5 })),
  forStep((step, _, at) => ({ do: "removeEffect", step, at: at % 3 })),
  words.map(
    (text): MakeEdit =>
      (p) => ({ do: "addItem", item: newItem(p, text || "Thing") }),
  ),
  fc.tuple(pick, words).map(
    ([at, id]): MakeEdit =>
      (p) => ({ do: "changeItem", item: itemIn(p, at), part: { id } }),
  ),
  fc.tuple(pick, pick).map(
    ([at, to]): MakeEdit =>
      (p) => {
        return { do: "changeItem", item: itemIn(p, at), part: { id: itemIn(p, to), porous: true } };
      },
  ),
  pick.map(
    (at): MakeEdit =>
      (p) => ({ do: "removeItem", item: itemIn(p, at) }),
  ),
  words.map(
    (text): MakeEdit =>
      (p) => ({ do: "addProduct", product: newProduct(p, text || "Product") }),
  ),
  fc.tuple(pick, words).map(
    ([at, id]): MakeEdit =>
      (p) => {
        return { do: "changeProduct", product: productIn(p, at), part: { id, use: "handRub" } };
      },
  ),
  fc.tuple(pick, number, words).map(
    ([at, contactSec, expiry]): MakeEdit =>
      (p) => {
        return { do: "changeLabel", product: productIn(p, at), part: { contactSec, expiry: expiry || null } };
      },
  ),
  pick.map(
    (at): MakeEdit =>
      (p) => ({ do: "removeProduct", product: productIn(p, at) }),
  ),
  fc.constantFrom(...eventIds).map(
    (event: EventId): MakeEdit =>
      () => ({ do: "addFlow", event }),
  ),
  fc.constantFrom(...eventIds).map(
    (event: EventId): MakeEdit =>
      () => ({ do: "removeFlow", event }),
  ),
  fc.tuple(fc.constantFrom(...eventIds), pick).map(
    ([event, at]): MakeEdit =>
      (p) => {
        return { do: "changeFlow", event, part: { asksItem: [itemIn(p, at), itemIn(p, at + 1)], onwards: "dressing" } };
      },
  ),
);
