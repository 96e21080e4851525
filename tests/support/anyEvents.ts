/** Arbitrary things that may be said, done and happen to the clocks at the small station. */
import { fc } from "@fast-check/vitest";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { smallProtocol } from "./smallProtocol";

const surfaces = ["chair", "lamp"] as const;
const surface = fc.constantFrom(...surfaces);
const plain = (...types: SessionEvent["type"][]) => fc.constantFrom(...types.map((type) => ({ type }) as SessionEvent));

export const anyQuestion = fc.record({
  type: fc.constant("question.asked" as const),
  about: fc.constantFrom("stillWet" as const, "stayedWet" as const, "reapply" as const, "wetAgain" as const),
  surfaces: fc.subarray([...surfaces], { minLength: 1 }),
});

const written = smallProtocol.breakdown.map((s) => s.id);
/** Sound ones swap the two that are wetted, or wiped; most others must not be taken. */
export const anyPlan: fc.Arbitrary<SessionEvent> = fc
  .oneof(
    fc.subarray([
      ["wetChair", "wetLamp"],
      ["wipeChair", "wipeLamp"],
    ]),
    fc.tuple(fc.constantFrom(...written), fc.constantFrom(...written)).map((pair) => [pair]),
  )
  .map((swaps) => ({
    type: "plan.chosen",
    order: swaps.reduce(
      (ids, [a, b]) => ids.map((id) => (id === a ? (b as string) : id === b ? (a as string) : id)),
      written,
    ),
  }));

export const anySaid: fc.Arbitrary<SessionEvent> = fc.oneof(
  { weight: 2, arbitrary: anyPlan },
  {
    weight: 1,
    arbitrary: fc.record({
      type: fc.constant("reapply.planned" as const),
      surfaces: fc.subarray([...surfaces], { minLength: 1 }),
    }),
  },
  { weight: 14, arbitrary: plain("step.done") },
  { weight: 4, arbitrary: plain("answer.yes", "answer.no", "answer.confirm") },
  { weight: 4, arbitrary: plain("surface.applied", "surface.wiped") },
  { weight: 2, arbitrary: anyQuestion },
  {
    weight: 3,
    arbitrary: plain("step.back", "step.skip", "step.problem", "procedure.finish", "session.close", "report.undo"),
  },
  { weight: 1, arbitrary: plain("session.pause", "session.resume", "exposure.reported", "step.again", "ask.howLong") },
  { weight: 1, arbitrary: plain("code.wanted", "ask.options", "item.outOfUse") },
  {
    weight: 1,
    arbitrary: fc.record({
      type: fc.constantFrom("item.outOfUse" as const, "item.backInUse" as const),
      item: fc.constantFrom("chair", "lamp", "bottle", "cup"),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      type: fc.constantFrom("surface.applied" as const, "surface.wiped" as const, "answer.yes" as const),
      surface,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      type: fc.constant("event.reported" as const),
      event: fc.constantFrom(...smallProtocol.events.map((e) => e.event)),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ type: fc.constant("sharps.counted" as const), inContainer: fc.nat({ max: 4 }) }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      type: fc.constant("reason.given" as const),
      reason: fc.constantFrom("noStock" as const, "ownDecision" as const, "notForClient" as const),
    }),
  },
);

/** What the two clocks of the device do between two readings, in milliseconds. */
export interface Passing {
  readonly kind: "passing";
  readonly monoMs: number;
  readonly wallMs: number;
}
export interface Reload {
  readonly kind: "reload";
}

const honest = fc.integer({ min: 1, max: 5_000 }).map((ms): Passing => ({ kind: "passing", monoMs: ms, wallMs: ms }));
const faulty = fc.oneof(
  // The wall clock is set back or ahead.
  fc
    .integer({ min: -90_000, max: 90_000 })
    .map((by): Passing => ({ kind: "passing", monoMs: 1_000, wallMs: 1_000 + by })),
  // The device sleeps: some monotonic clocks stop, some go on.
  fc.integer({ min: 6_000, max: 400_000 }).map((ms): Passing => ({ kind: "passing", monoMs: ms, wallMs: ms })),
  fc.integer({ min: 6_000, max: 400_000 }).map((ms): Passing => ({ kind: "passing", monoMs: 50, wallMs: ms })),
  // One runs a little faster than the other.
  fc
    .integer({ min: -1_500, max: 1_500 })
    .map((by): Passing => ({ kind: "passing", monoMs: 1_000, wallMs: 1_000 + by })),
);

export type Happening = { readonly kind: "said"; readonly event: SessionEvent } | Passing | Reload;

const said = (event: SessionEvent): Happening => ({ kind: "said", event });

type About = "stillWet" | "stayedWet" | "reapply";
const seconds = (min: number, max: number) =>
  fc
    .integer({ min, max })
    .map((n) =>
      Array.from({ length: Math.ceil(n / 5) }, (): Passing => ({ kind: "passing", monoMs: 5_000, wallMs: 5_000 })),
    );
const asked = (about: About, answer: SessionEvent): Happening[] => [
  said({ type: "question.asked", about, surfaces: ["chair", "lamp"] }),
  said(answer),
];
const yes: SessionEvent = { type: "answer.yes" };

/** The life of two wet surfaces as people and devices make it: waits, sprays, questions answered, and faults between. */
export const anyHappenings: fc.Arbitrary<Happening[]> = fc
  .array(
    fc.oneof(
      {
        weight: 10,
        arbitrary: seconds(60, 105).map((wait) => [...wait, ...asked("reapply", { type: "surface.applied" })]),
      },
      { weight: 7, arbitrary: seconds(20, 80).map((wait) => [...wait, ...asked("stayedWet", yes)]) },
      { weight: 3, arbitrary: seconds(0, 60).map((wait) => [...wait, ...asked("stillWet", yes)]) },
      { weight: 1, arbitrary: fc.constant(asked("stayedWet", { type: "answer.no" })) },
      { weight: 1, arbitrary: fc.constant<Happening[]>([{ kind: "reload" }]) },
      { weight: 1, arbitrary: faulty.map((p): Happening[] => [p]) },
      { weight: 1, arbitrary: honest.map((p): Happening[] => [p]) },
      { weight: 1, arbitrary: anySaid.map((event): Happening[] => [said(event)]) },
    ),
    { maxLength: 16 },
  )
  .map((runs) => runs.flat());

/** Ways to where things get interesting; a random walk alone seldom gets there. */
const walk = (n: number): SessionEvent[] => Array.from({ length: n }, () => ({ type: "step.done" }));
const confirm: SessionEvent = { type: "answer.confirm" };
const both: SessionEvent = { type: "question.asked", about: "reapply", surfaces: ["chair", "lamp"] };

export const anyStart: fc.Arbitrary<SessionEvent[]> = fc.constantFrom<SessionEvent[]>(
  [],
  walk(7),
  [...walk(7), { type: "procedure.finish" }, ...walk(1)],
  [...walk(7), { type: "procedure.finish" }, ...walk(1), { type: "event.reported", event: "touched", item: "bottle" }],
  [...walk(7), { type: "procedure.finish" }, ...walk(2), confirm, ...walk(5), both],
  [...walk(7), { type: "procedure.finish" }, ...walk(2), confirm, ...walk(8)],
);

/** Both surfaces are wet, and the next step wipes the first. */
export const bothWet: SessionEvent[] = [...walk(7), { type: "procedure.finish" }, ...walk(2), confirm, ...walk(8)];

const wait = (n: number): SessionEvent[] =>
  Array.from({ length: n }, () => ({ type: "time.witnessed", elapsedMs: 5_000 }));

/** Everything is done and nothing is sealed: the moments in which a session could be closed pretending. */
export const toTheEnd: SessionEvent[] = [
  ...bothWet,
  ...wait(21),
  { type: "question.asked", about: "reapply", surfaces: ["chair", "lamp"] },
  { type: "surface.applied" },
  ...wait(16),
  { type: "question.asked", about: "stayedWet", surfaces: ["chair", "lamp"] },
  { type: "answer.yes" },
  ...walk(4),
];

/** What may be said at the end: closing, and whatever makes a count or a surface false once more. */
export const anyEnding: fc.Arbitrary<SessionEvent[]> = fc
  .array(
    fc.oneof(
      { weight: 4, arbitrary: fc.constant<SessionEvent[]>([{ type: "session.close" }, confirm]) },
      {
        weight: 2,
        arbitrary: fc.constant<SessionEvent[]>([{ type: "event.reported", event: "newNeedle" }, ...walk(2)]),
      },
      {
        weight: 2,
        arbitrary: fc.constant<SessionEvent[]>([{ type: "event.reported", event: "touched", item: "lamp" }]),
      },
      { weight: 2, arbitrary: fc.constant<SessionEvent[]>([{ type: "report.undo" }]) },
      { weight: 1, arbitrary: fc.constant<SessionEvent[]>([{ type: "sharps.counted", inContainer: 1 }]) },
      { weight: 2, arbitrary: anySaid.map((event) => [event]) },
    ),
    { maxLength: 8 },
  )
  .map((runs) => runs.flat());
