import { describe, expect, test } from "vitest";
import { atPace, crossed, middleOf, type Said } from "./splice";

const rateHz = 16_000;
/** A tone from 300 to 1300 ms, silent for 30 ms from `restAtMs`. */
function tone(hertz: number, size: number, restAtMs: number): Said {
  const sound = Float32Array.from({ length: 1.6 * rateHz }, (_, n) => {
    const ms = (1000 * n) / rateHz;
    const isSaid = ms >= 300 && ms < 1300 && (ms < restAtMs || ms >= restAtMs + 30);
    return isSaid ? size * Math.sin((2 * Math.PI * hertz * n) / rateHz) : 0;
  });
  return { sound, startMs: 300, endMs: 1300 };
}
const part = ({ sound }: Said, fromMs: number, toMs: number) => sound.slice(fromMs * 16, toMs * 16);
/** Upward zero crossings a second. */
const hertzOf = (sound: Float32Array) =>
  (sound.filter((x, n) => n > 0 && x >= 0 && (sound[n - 1] as number) < 0).length * rateHz) / sound.length;
const loudestOf = (sound: Float32Array) => sound.reduce((most, x) => Math.max(most, Math.abs(x)), 0);

describe("one phrase begun and another ended", () => {
  const [low, high] = [tone(200, 0.2, 840), tone(900, 0.05, 660)];
  const both = crossed(low, high, [0.5, 0.4]);

  test("are cut where each is quietest near its middle, and end when the second would", () => {
    expect(hertzOf(part(both, 350, 830))).toBeCloseTo(200, -1);
    expect(hertzOf(part(both, 880, both.endMs))).toBeCloseTo(900, -1);
    expect(Math.abs(both.endMs - (850 + (1300 - 680)))).toBeLessThan(30);
    expect(loudestOf(part(both, both.endMs + 1, 1600))).toBe(0);
    expect(both.startMs).toBe(300);
  });

  test("are equally loud, for a leap would tell them from a phrase", () => {
    expect(loudestOf(part(both, 900, both.endMs)) / loudestOf(part(both, 350, 800))).toBeCloseTo(1, 1);
  });

  test("pass into each other without a click where nothing near is quiet", () => {
    const steady = (value: number): Said => ({
      sound: new Float32Array(1.6 * rateHz).fill(value),
      startMs: 300,
      endMs: 1300,
    });
    const { sound } = crossed(steady(0.2), steady(-0.2), [0.5, 0.4]);
    const steps = sound.slice(1).map((x, n) => Math.abs(x - (sound[n] as number)));
    expect([sound[0], sound.at(-1)]).toEqual([expect.closeTo(0.2, 6), expect.closeTo(-0.2, 6)]);
    expect(loudestOf(steps)).toBeLessThan(0.01);
  });

  test("leave the takes as they were", () => {
    expect(low).toEqual(tone(200, 0.2, 840));
    expect(high).toEqual(tone(900, 0.05, 660));
  });
});

test("the middle of a command lies behind the address word, in each language", () => {
  // s-t-a-t-i-o-n is 7 of 16 letters, e-s-t-a-c-i-ó-n 8 of 18.
  expect(middleOf("station", "done", "en")).toBeCloseTo((7 + 4.5) / 16, 9);
  expect(middleOf("station", "yes", "es")).toBeCloseTo((8 + 5) / 18, 9);
});

test("a phrase at another pace is shorter and higher, and lies where it then lies", () => {
  const quick = atPace(tone(200, 0.2, 2000), 1.08);
  expect(quick.sound.length).toBeCloseTo((1.6 * rateHz) / 1.08, -1);
  expect([quick.startMs, quick.endMs]).toEqual([300 / 1.08, 1300 / 1.08]);
  expect(hertzOf(part(quick, 320, 1180))).toBeCloseTo(216, -1);
});
