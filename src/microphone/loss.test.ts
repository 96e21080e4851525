import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { LossWatch } from "./loss";

const rateHz = 48_000;
const chunk = 1024;
const chunkMs = (chunk * 1000) / rateHz;
/** Feeds `count` chunks, the first at `fromMs`, as an audio thread would. */
function feed(watch: LossWatch, fromMs: number, count: number, firstFrame = 0) {
  return Array.from({ length: count }, (_, n) =>
    watch.chunk(fromMs + n * chunkMs, firstFrame + n * chunk, chunk),
  ).flat();
}

describe("watching for the loss of sound", () => {
  test("says nothing while sound comes as it should", () => {
    const watch = new LossWatch(rateHz, 0);
    expect([...feed(watch, chunkMs, 500), ...watch.tick(500 * chunkMs + 100)]).toEqual([]);
  });

  test("calls it lost after two seconds without any, once, and back with the next chunk", () => {
    const watch = new LossWatch(rateHz, 0);
    feed(watch, 0, 10);
    const lastMs = 9 * chunkMs;
    expect(watch.tick(lastMs + 1999)).toEqual([]);
    expect(watch.tick(lastMs + 2000)).toEqual([{ type: "lost", reason: "no-frames" }]);
    expect(watch.tick(lastMs + 2500)).toEqual([]);
    expect(watch.chunk(lastMs + 3000, 10 * chunk, chunk)[0]).toEqual({ type: "back" });
  });

  test("counts the sound that never came", () => {
    const watch = new LossWatch(rateHz, 0);
    feed(watch, 0, 10);
    const [event] = watch.chunk(10 * chunkMs + 400, 10 * chunk, chunk);
    expect(event).toMatchObject({ type: "dropped" });
    expect(event?.type === "dropped" && event.lostMs).toBeCloseTo(400, 6);
  });

  test("counts frames that the audio thread skipped", () => {
    const watch = new LossWatch(rateHz, 0);
    feed(watch, 0, 10);
    const [event] = watch.chunk(10 * chunkMs, 10 * chunk + rateHz / 2, chunk);
    expect(event?.type === "dropped" && event.totalMs).toBeCloseTo(500, 6);
  });

  test("an ended track stays lost, whatever else comes back", () => {
    const watch = new LossWatch(rateHz, 0);
    expect(watch.stopped("ended")).toEqual([{ type: "lost", reason: "ended" }]);
    expect([...watch.stopped("suspended"), ...watch.resumed("suspended"), ...feed(watch, 0, 5)]).toEqual([]);
    expect(watch.isLost).toBe(true);
  });

  test("is back only when every reason is gone", () => {
    const watch = new LossWatch(rateHz, 0);
    watch.stopped("muted");
    watch.stopped("suspended");
    expect(watch.resumed("muted")).toEqual([]);
    expect(watch.resumed("suspended")).toEqual([{ type: "back" }]);
  });

  property.prop([fc.array(fc.double({ min: 0, max: 140, noNaN: true }), { minLength: 1, maxLength: 80 })])(
    "calls nothing dropped for chunks that are only late",
    (delays) => {
      const watch = new LossWatch(rateHz, 0);
      const events = delays.flatMap((delay, n) => watch.chunk(n * chunkMs + delay, n * chunk, chunk));
      expect(events).toEqual([]);
    },
  );
});
