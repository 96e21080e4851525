import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { LossWatch, tickMs } from "./loss";

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

  test("calls it lost within two seconds without any, once, and back with the next chunk", () => {
    const watch = new LossWatch(rateHz, 0);
    feed(watch, 0, 10);
    const lastMs = 9 * chunkMs;
    const ticks = Array.from({ length: 12 }, (_, n) => watch.tick(lastMs + 100 + n * tickMs));
    expect(ticks.flat()).toEqual([{ type: "lost", reason: "no-frames" }]);
    expect(ticks.findIndex((events) => events.length > 0) * tickMs + 100).toBeLessThanOrEqual(2000);
    expect(watch.chunk(lastMs + 3000, 10 * chunk, chunk)[0]).toEqual({ type: "back" });
  });

  test("tells it within two seconds in a hidden page too, where ticks come once a second", () => {
    const watch = new LossWatch(rateHz, 0);
    feed(watch, 0, 10);
    const lastMs = 9 * chunkMs;
    expect(watch.tick(lastMs + 1)).toEqual([]);
    expect(watch.tick(lastMs + 1001)).toEqual([{ type: "lost", reason: "no-frames" }]);
  });

  test("does not call a page that was busy for three seconds deaf: its chunks wait behind the tick", () => {
    const watch = new LossWatch(rateHz, 0);
    feed(watch, 0, 10);
    expect([...watch.tick(3200), ...feed(watch, 3201, 140, 10 * chunk), ...watch.tick(3450)]).toEqual([]);
  });

  test("counts the sound that never came, once it is sure that it was not only late", () => {
    const watch = new LossWatch(rateHz, 0);
    const before = feed(watch, 0, 500);
    const after = Array.from({ length: 800 }, (_, n) =>
      watch.chunk((500 + n) * chunkMs + 400, (500 + n) * chunk, chunk),
    );
    const events = [...before, ...after.flat()];
    expect(events).toMatchObject([{ type: "dropped", isHere: false }]);
    expect(events[0]?.type === "dropped" && events[0].totalMs).toBeCloseTo(400, 6);
  });

  test("counts frames that the audio thread skipped, at the place where they are missing", () => {
    const watch = new LossWatch(rateHz, 0);
    feed(watch, 0, 10);
    const [event] = watch.chunk(10 * chunkMs + 500, 10 * chunk + rateHz / 2, chunk);
    expect(event).toEqual({ type: "dropped", lostMs: 500, totalMs: 500, isHere: true });
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

  property.prop([fc.array(fc.integer({ min: 0, max: 1500 }), { minLength: 20, maxLength: 40 })])(
    "calls nothing dropped when a busy page only hears late, and catches up now and then",
    (busyMs) => {
      const watch = new LossWatch(rateHz, 0);
      const perBusy = Math.ceil(2000 / chunkMs);
      const events = busyMs.flatMap((ms, b) =>
        Array.from({ length: perBusy }, (_, n) => {
          const dueMs = (b * perBusy + n) * chunkMs;
          return watch.chunk(Math.max(dueMs, b * perBusy * chunkMs + ms), (b * perBusy + n) * chunk, chunk);
        }),
      );
      expect(events.flat()).toEqual([]);
    },
  );

  test("does not call a clock that runs one part in ten thousand slow a loss", () => {
    const watch = new LossWatch(rateHz, 0);
    const hour = Array.from({ length: Math.ceil(3_600_000 / chunkMs) }, (_, n) =>
      watch.chunk(n * chunkMs * 1.0001, n * chunk, chunk),
    );
    expect(hour.flat()).toEqual([]);
  });
});
