import { fc, test as property } from "@fast-check/vitest";
import { expect, it } from "vitest";
import type { SessionEvent } from "../../../machines/session/vocabulary";
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { newSigner } from "../../log";
import { bundledProtocols } from "../../session/protocols";
import { conventionBooth } from "../../session/protocols/conventionBooth";
import { currentRules } from "../../session/rules";
import { anyEvent, anyWalkOf } from "../samples/anyEvents";
import { live } from "../samples/lived";
import { follows } from "./follows";
import { replay } from "./replay";

const input = inputFor(smallProtocol);
const signer = await newSigner();

property.prop([fc.array(anyEvent, { maxLength: 120, size: "max" })], { numRuns: 60 })(
  "finds nothing wrong with any session that the chart itself decided",
  async (events) => {
    const { kept } = await live(input, events, signer);
    expect(follows(input, kept.entries, currentRules)).toMatchObject({ ok: true });
  },
);

const leftBefore = inputFor(smallProtocol, { carriedOver: ["chair", "cup", "needle"] });
const slip = { type: "event.reported", event: "touched", item: "bottle" } as const;
/** Soiled gloves, so that what they touch is soiled. */
const torn = { type: "event.reported", event: "tornGlove" } as const;

property.prop(
  [fc.array(anyEvent, { maxLength: 60, size: "max" }), fc.array(anyEvent, { maxLength: 80, size: "max" })],
  {
    numRuns: 40,
  },
)("nor with one that begins with what was left unready, or that a slip adds steps to", async (before, after) => {
  const { kept } = await live(leftBefore, [...before, torn, slip, ...after], signer);
  expect(follows(leftBefore, kept.entries, currentRules)).toMatchObject({ ok: true });
});

property.prop([fc.constantFrom(...bundledProtocols).chain((p) => anyWalkOf(p, 150).map((events) => ({ p, events })))], {
  numRuns: 15,
})("nor with one at a station of a bundled protocol", async ({ p, events }) => {
  const at = inputFor(p, { carriedOver: [p.items[0]?.id ?? ""] });
  const { kept } = await live(at, events, signer);
  expect(replay(currentRules, at, kept.entries)).toMatchObject({ ok: true });
});

/** Wet under its clock, and ready; then soiled gloves: a step that touches and wets it in one begins a new clock. */
it("nor with one in which a step wets again what it has just soiled", async () => {
  const done: SessionEvent = { type: "step.done" };
  const { setUp } = conventionBooth;
  const wets = setUp.findIndex((s) => s.effects.some((e) => e.verb === "apply"));
  const toThere = Array.from({ length: wets }, () => done);
  const twice = [setUp[wets]].flatMap((s) => (s ? [s, { ...s, id: "wetAgain" }] : []));
  const at = inputFor({ ...conventionBooth, setUp: [...setUp.slice(0, wets), ...twice, ...setUp.slice(wets + 1)] });
  const waited = Array.from({ length: 13 }, (): SessionEvent => ({ type: "time.witnessed", elapsedMs: 5_000 }));
  const surfaces = twice.flatMap((s) => s.effects.flatMap((e) => (e.verb === "apply" ? [e.item] : [])));
  const asked: SessionEvent = { type: "question.asked", about: "stayedWet", surfaces };
  const torn: SessionEvent = { type: "event.reported", event: "tornGlove" };
  const events: SessionEvent[] = [...toThere, done, ...waited, asked, { type: "answer.yes" }, torn];
  // The flow of the torn glove is not walked: the artist goes on with the gloves that are soiled.
  const { kept } = await live({ ...at, protocol: withoutFlows(at.protocol) }, [...events, done], signer);
  const facts = kept.entries.map((e) => e.fact);
  expect(facts.filter((f) => f.type === "v1.WetClockReady").length).toBeGreaterThan(0);
  expect(facts.filter((f) => f.type === "v1.WetClockStarted").length).toBeGreaterThan(new Set(surfaces).size);
  expect(replay(currentRules, { ...at, protocol: withoutFlows(at.protocol) }, kept.entries)).toMatchObject({
    ok: true,
  });
});

const withoutFlows = (p: typeof conventionBooth): typeof conventionBooth => ({
  ...p,
  events: p.events.map((f) => ({ ...f, steps: [] })),
});
