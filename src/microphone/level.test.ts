import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { LevelMeter } from "./level";

const rateHz = 16_000;
const tone = (amplitude: number, n: number) => Float32Array.from({ length: n }, (_, i) => amplitude * Math.sin(i / 3));
const levelsOf = (...parts: readonly (readonly [amplitude: number, tenths: number])[]) => {
  const meter = new LevelMeter(rateHz);
  return parts.flatMap(([amplitude, tenths]) => meter.take(tone(amplitude, tenths * 1600)));
};

describe("the level", () => {
  test("of a sine is its amplitude over the square root of two", () => {
    const [level] = levelsOf([0.5, 1]);
    expect(level?.rms).toBeCloseTo(0.5 / Math.SQRT2, 3);
    expect(level?.peak).toBeCloseTo(0.5, 2);
  });

  property.prop([fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 20 })])(
    "comes ten times a second however the sound is cut",
    (cuts) => {
      const meter = new LevelMeter(rateHz);
      const total = cuts.reduce((sum, n) => sum + n, 0);
      const count = cuts.flatMap((n) => meter.take(tone(0.1, n))).length;
      expect(count).toBe(Math.floor(total / 1600));
    },
  );
});
