import { expect, test } from "vitest";
import { rateHz } from "../../audio/make/rehearsal/artistVoice";
import { check, verifyTwice } from "../../audio/make/rehearsal/check";
import { record, demonstrated as take, timelineOf } from "../../audio/make/rehearsal/record";
import { tempFolder } from "../support/tempFolder";

/** About 12 minutes of sound, beside a machine at 15 dB, by a voice that was never trained on. */
test("a whole recorded session is heard without a mistake and becomes a sealed record", async () => {
  const recorded = await record(take);
  const { samples } = recorded;
  const timeline = timelineOf(take, recorded);
  expect(timeline.soundMs).toBeLessThanOrEqual(12 * 60_000);
  expect(timeline.labels[0]?.startMs).toBeGreaterThanOrEqual(6_000);

  const folder = tempFolder("whole");
  const { compared, whole, rehearsal, recordPath } = await check({ samples, rateHz }, timeline, folder);
  expect(compared).toMatchObject({
    said: timeline.labels.length,
    right: timeline.labels.length,
    missed: [],
    wrong: [],
  });
  expect(whole).toMatchObject({ missedSteps: [], refused: [], unready: [], isClosed: true });
  expect(whole.steps).toBeGreaterThanOrEqual(45);
  expect(rehearsal.figures.acted).toBe(timeline.labels.length);
  expect(await verifyTwice(recordPath, 54_321)).toEqual({ asItIs: true, altered: false });
});
