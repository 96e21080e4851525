/** Hands: the published durations, and a timer that is never early. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { methodFor, neededMs, publishedDurations, sanitiserStrongEnough } from "./durations";
import { countsAsHygiene, type HandStep, mostTickMs, sayHands, startTimer, stop, timerView, witness } from "./timer";

/** Ticks of equal length, one after another; what was said over all of them. */
function run(ticks: readonly number[], method: "wash" | "rub" = "wash"): HandStep {
  return ticks.reduce<HandStep>(
    ({ timer, say }, ms) => {
      const next = witness(timer, ms);
      return { timer: next.timer, say: [...say, ...next.say] };
    },
    { timer: startTimer(method), say: [] },
  );
}
const seconds = (n: number) => Array.from({ length: n }, () => 1000);

describe("durations", () => {
  it("washes 40 s, which meets WHO 2009 (40-60 s), CDC (20 s) and the older 15 s", () => {
    const least = publishedDurations.filter((d) => d.method === "wash").map((d) => d.leastMs);
    expect(least).toEqual([40_000, 20_000, 15_000]);
    expect(least.every((ms) => neededMs.wash >= ms)).toBe(true);
    expect(neededMs.wash).toBeLessThanOrEqual(60_000);
  });

  it("rubs 30 s, inside WHO 2009 (20-30 s, from memory) and EN 1500 (30-60 s)", () => {
    const rubs = publishedDurations.filter((d) => d.method === "rub");
    expect(rubs.map((d) => [d.leastMs, d.mostMs])).toEqual([
      [20_000, 30_000],
      [30_000, 60_000],
    ]);
    expect(rubs.every((d) => d.leastMs <= neededMs.rub && neededMs.rub <= (d.mostMs ?? 0))).toBe(true);
  });

  it("washes what is visibly soiled and rubs what is not (CDC)", () => {
    expect([methodFor({ visiblySoiled: true }), methodFor({ visiblySoiled: false })]).toEqual(["wash", "rub"]);
  });

  it("wants at least 60 % alcohol in a sanitiser (CDC)", () => {
    expect([sanitiserStrongEnough(59.9), sanitiserStrongEnough(60)]).toEqual([false, true]);
  });
});

describe("the timer", () => {
  it("counts aloud every ten seconds and is done at forty", () => {
    expect(run(seconds(40)).say.map(sayHands)).toEqual(["10", "20", "30", "Washed. Dry with a fresh towel."]);
    expect(run(seconds(30), "rub").say.map(sayHands)).toEqual(["10", "20", "Rubbed. Let them dry."]);
  });

  it("is not done a millisecond early", () => {
    expect(run([...seconds(39), 999]).timer.state).toBe("running");
    expect(run([...seconds(39), 999, 1]).timer.state).toBe("done");
  });

  it("starts again after a gap nobody watched, and says so", () => {
    const { timer, say } = run([...seconds(35), mostTickMs + 1, ...seconds(39)]);
    expect(timer).toMatchObject({ state: "running", creditedMs: 39_000 });
    expect(say.map(sayHands)).toContain("I lost count. Start again.");
  });

  it("credits nothing when time runs back or is no number", () => {
    expect(run([...seconds(20), -5]).timer.creditedMs).toBe(0);
    expect(run([...seconds(20), Number.NaN]).timer.creditedMs).toBe(0);
  });

  it("keeps a wash stopped early as it was, and does not count it before gloves", () => {
    const stopped = stop(run([...seconds(30), 500]).timer);
    expect(stopped.say.map(sayHands)).toEqual(["10 seconds short."]);
    expect(countsAsHygiene(stopped.timer)).toBe(false);
    expect(countsAsHygiene(witness(stopped.timer, 1000).timer)).toBe(false);
  });

  it("lets gloves on after a wash of forty seconds (CDC: hand hygiene before donning)", () => {
    expect(countsAsHygiene(run(seconds(40)).timer)).toBe(true);
  });

  it("shows seconds left, rounded up", () => {
    expect(timerView(run([...seconds(10), 1]).timer)).toEqual({ leftS: 30, share: 10_001 / 40_000 });
  });

  it("can be asked for longer, never for shorter", () => {
    expect([startTimer("wash", 60_000).neededMs, startTimer("wash", 5000).neededMs]).toEqual([60_000, 40_000]);
  });

  property.prop([
    fc.array(fc.oneof(fc.integer({ min: 0, max: 2000 }), fc.integer({ min: -1000, max: 100_000 })), { maxLength: 120 }),
  ])("is done only when the last unbroken ticks add up to the whole time", (ticks) => {
    const { timer } = run(ticks);
    const last = ticks.findLastIndex((ms) => ms < 0 || ms > mostTickMs);
    const stretches = ticks
      .map((ms) => (ms < 0 || ms > mostTickMs ? "gap" : ms))
      .join(" ")
      .split("gap");
    const runs = stretches.map((stretch) => stretch.split(" ").reduce((sum, ms) => sum + Number(ms), 0));
    expect(timer.state === "done").toBe(runs.some((sum) => sum >= 40_000));
    expect(timer.state === "done" || timer.creditedMs === ticks.slice(last + 1).reduce((a, b) => a + b, 0)).toBe(true);
  });
});
