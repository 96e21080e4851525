import { fc, test as property } from "@fast-check/vitest";
import { expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { newSigner } from "../log";
import { recordOf } from "./recordFile";
import { anyEvent } from "./samples/anyEvents";
import { live } from "./samples/lived";
import { wholeSession } from "./samples/wholeSession";
import { ticksOf, timelineOf } from "./timeline";

const input = inputFor(smallProtocol);
const signer = await newSigner();
const { kept } = await live(input, wholeSession, signer);
const timeline = timelineOf(recordOf(kept));

test("lays the phases end to end", () => {
  const { phases } = timeline;
  expect(phases.map(({ what }) => what)).toEqual(["setUp", "procedure", "dressing", "breakdown"]);
  expect(phases.slice(1).every(({ fromMs }, at) => fromMs === phases[at]?.toMs)).toBe(true);
});

test("shows the gloves from bare to soiled and back", () => {
  const { hands } = timeline;
  expect(hands[0]?.what).toBe("bare");
  expect(hands.map(({ what }) => what)).toContain("glovedSoiled");
  expect(hands.at(-1)?.what).toBe("washed");
});

test("draws a clock as long as the label's time was watched", () => {
  const chair = timeline.surfaces.find(({ surface }) => surface === "chair");
  const counted = (chair?.states ?? []).filter(({ what }) => what === "counting");
  const total = counted.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
  // Every event but the passing of time takes half a second in these samples.
  expect(total).toBeGreaterThanOrEqual(180_000);
  expect(total).toBeLessThan(186_000);
});

test("marks every deviation at its entry", () => {
  const facts = kept.entries.filter(({ fact }) => fact.type === "v1.Deviation").map(({ n }) => n);
  expect(timeline.marks.filter(({ kind }) => kind === "deviation").map(({ n }) => n)).toEqual(facts);
});

test("does not run back where the wall clock was set back", () => {
  const back = recordOf(kept);
  const entries = back.entries.map((entry, at) =>
    at > 30 ? { ...entry, at: "2026-11-25T08:00:00.000+00:00" } : entry,
  );
  const { fromMs, toMs, marks } = timelineOf({ ...back, entries });
  expect(marks.every(({ atMs }) => atMs >= fromMs && atMs <= toMs)).toBe(true);
});

property.prop([fc.array(anyEvent, { maxLength: 60 })], { numRuns: 20 })(
  "leaves no hole and no overlap in the hands' lane",
  async (events) => {
    const lived = await live(input, events, signer);
    const { hands, fromMs, toMs } = timelineOf(recordOf(lived.kept));
    expect(hands.slice(1).every((span, at) => span.fromMs === hands[at]?.toMs)).toBe(true);
    if (hands.length > 0) expect([hands[0]?.fromMs, hands.at(-1)?.toMs]).toEqual([fromMs, toMs]);
  },
);

test.each([
  [12, 8],
  [95, 8],
  [400, 8],
  [3000, 8],
])("writes at most %#: eight times along %i minutes, all within it", (minutes, most) => {
  const fromMs = Date.UTC(2026, 10, 25, 9, 3);
  const ticks = ticksOf({ fromMs, toMs: fromMs + minutes * 60_000, offsetMin: 60 });
  expect(ticks.length).toBeLessThanOrEqual(most);
  expect(ticks.length).toBeGreaterThan(1);
  expect(ticks.every(({ atMs }) => atMs >= fromMs && atMs <= fromMs + minutes * 60_000)).toBe(true);
});

test("writes the station's own clock, not UTC", () => {
  const fromMs = Date.UTC(2026, 10, 25, 9, 0);
  expect(ticksOf({ fromMs, toMs: fromMs + 5 * 60_000, offsetMin: 60 })[0]?.clock).toBe("10:00");
});
