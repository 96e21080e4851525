/** Arbitrary things a person and the world may do in the small station, leaning towards getting on with the work. */
import { fc } from "@fast-check/vitest";
import type { SessionEvent } from "../../../machines/session/vocabulary";
import { anyPlan } from "../../../tests/support/anyEvents";
import type { Protocol } from "../../session/protocol";

const surface = fc.option(fc.constantFrom("chair", "lamp"), { nil: undefined });
const maybe = <T extends object>(event: T, name: string, value: string | undefined) =>
  (value === undefined ? event : { ...event, [name]: value }) as SessionEvent;
const plain = (...names: SessionEvent["type"][]) => fc.constantFrom(...names.map((type) => ({ type }) as SessionEvent));

export const anyEvent: fc.Arbitrary<SessionEvent> = fc.oneof(
  { weight: 2, arbitrary: anyPlan },
  { weight: 1, arbitrary: fc.constant<SessionEvent>({ type: "reapply.planned", surfaces: ["chair", "lamp"] }) },
  { weight: 12, arbitrary: plain("step.done") },
  { weight: 4, arbitrary: plain("answer.yes", "answer.no", "answer.confirm") },
  { weight: 3, arbitrary: plain("step.back", "step.skip", "step.problem", "report.undo", "procedure.finish") },
  { weight: 2, arbitrary: plain("session.close", "session.pause", "session.resume", "exposure.reported", "ear.lost") },
  {
    weight: 6,
    arbitrary: fc
      .integer({ min: 0, max: 5_000 })
      .map((elapsedMs) => ({ type: "time.witnessed", elapsedMs }) as SessionEvent),
  },
  { weight: 3, arbitrary: fc.constant<SessionEvent>({ type: "time.witnessed", elapsedMs: 100_000 }) },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom("reload", "sleep", "drift", "clockSet")
      .map((why) => ({ type: "time.gap", why }) as SessionEvent),
  },
  { weight: 2, arbitrary: surface.map((id) => maybe({ type: "surface.applied" }, "surface", id)) },
  { weight: 2, arbitrary: surface.map((id) => maybe({ type: "surface.wiped" }, "surface", id)) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(
        fc.constantFrom("newNeedle", "freshGloves", "touched", "dropped", "tornGlove", "stopEarly", "note"),
        surface,
      )
      .map(([event, item]) => maybe({ type: "event.reported", event }, "item", item)),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom("notForClient", "noStock", "ownDecision")
      .map((reason) => ({ type: "reason.given", reason }) as SessionEvent),
  },
  {
    weight: 1,
    arbitrary: fc
      .integer({ min: 0, max: 3 })
      .map((inContainer) => ({ type: "sharps.counted", inContainer }) as SessionEvent),
  },
  { weight: 1, arbitrary: fc.boolean().map((on) => ({ type: "brisk.set", on }) as SessionEvent) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      { type: "lot.given", item: "needle", lot: "N-205", expiry: "2028-01-31" },
      { type: "lot.given", item: "needle", lot: "N-101", expiry: "2025-01-31" },
      { type: "lot.shown", lot: "N-206", expiry: "2028-01-31" },
      { type: "lot.shown", lot: "N-102", expiry: "2025-01-31" },
      { type: "code.refused", why: "codeUnreadable" },
      { type: "sharps.explained", reason: "miscounted" },
      { type: "item.outOfUse" },
      { type: "item.outOfUse", item: "lamp" },
      { type: "item.backInUse", item: "lamp" },
      { type: "time.witnessed", elapsedMs: 500, today: "2026-11-26" },
    ) as fc.Arbitrary<SessionEvent>,
  },
);

const ticks = (n: number): SessionEvent[] =>
  Array.from({ length: n }, () => ({ type: "time.witnessed", elapsedMs: 5_000 }));

/** The same at a station of any protocol: mostly done as asked, with its own events, slips and accidents between. */
export function anyWalkOf(protocol: Protocol, maxLength: number): fc.Arbitrary<SessionEvent[]> {
  const item = fc.option(fc.constantFrom(...protocol.items.map((i) => i.id)), { nil: undefined });
  const event = fc.constantFrom(...protocol.events.map((f) => f.event));
  const one = fc.oneof(
    { weight: 35, arbitrary: plain("step.done").map((e) => [e]) },
    {
      weight: 5,
      arbitrary: fc.constant<SessionEvent[]>([
        ...ticks(14),
        { type: "surface.applied" },
        ...ticks(12),
        { type: "answer.yes" },
      ]),
    },
    {
      weight: 5,
      arbitrary: fc.tuple(event, item).map(([e, id]) => [maybe({ type: "event.reported", event: e }, "item", id)]),
    },
    {
      weight: 1,
      arbitrary: fc.constant<SessionEvent[]>([{ type: "exposure.reported" }, { type: "session.resume" }]),
    },
    {
      weight: 4,
      arbitrary: plain("answer.confirm", "answer.no", "report.undo", "procedure.finish", "step.back").map((e) => [e]),
    },
  );
  return fc.array(one, { maxLength, size: "max" }).map((runs) => runs.flat());
}
