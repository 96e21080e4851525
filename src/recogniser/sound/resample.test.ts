import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { Resampler, resample } from "./resample";

const tone = (hz: number, rateHz: number, seconds: number) =>
  Float32Array.from(
    { length: Math.round(seconds * rateHz) },
    (_, n) => 0.5 * Math.sin((2 * Math.PI * hz * n) / rateHz),
  );
const middle = (x: Float32Array) => x.subarray(Math.floor(x.length * 0.2), Math.floor(x.length * 0.8));
const loudest = (x: Float32Array) => x.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
const difference = (a: Float32Array, b: Float32Array) => loudest(a.map((v, n) => v - (b[n] ?? 0)));
const anyRate = fc.oneof(
  fc.constantFrom(8000, 11_025, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 88_200, 96_000),
  fc.integer({ min: 8000, max: 96_000 }),
);

describe("resampling to 16 kHz", () => {
  property.prop([anyRate, fc.integer({ min: 60, max: 3200 })], { numRuns: 30 })(
    "keeps a tone that the ear can hear where it was, within a thousandth, at any rate",
    (rateHz, hz) => {
      const ours = resample(tone(hz, rateHz, 0.25), rateHz);
      expect(difference(middle(ours), middle(tone(hz, 16_000, 0.25)))).toBeLessThan(1e-3);
    },
  );

  test.each([44_100, 48_000, 96_000])("lets nothing above 8 kHz fold back, from %i Hz", (rateHz) => {
    const folded = [8_120, 9_000, 12_000, 14_500, 20_000].map((hz) =>
      loudest(middle(resample(tone(hz, rateHz, 0.25), rateHz))),
    );
    expect(Math.max(...folded)).toBeLessThan(0.5 * 10 ** (-70 / 20));
  });

  property.prop([anyRate, fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 12 })], { numRuns: 20 })(
    "gives the same samples however the sound is cut",
    (rateHz, cuts) => {
      const sound = tone(700, rateHz, 0.2);
      const whole = new Resampler(rateHz).push(sound);
      const resampler = new Resampler(rateHz);
      const pieces: number[] = [];
      let at = 0;
      for (const cut of [...cuts, sound.length]) {
        pieces.push(...resampler.push(sound.subarray(at, at + cut)));
        at = Math.min(sound.length, at + cut);
      }
      expect(pieces).toEqual([...whole]);
    },
  );

  property.prop([anyRate, fc.integer({ min: 1, max: 9000 })], { numRuns: 30 })(
    "gives as many samples as the time asks for",
    (rateHz, n) => {
      expect(resample(new Float32Array(n), rateHz).length).toBe(Math.ceil((n * 16_000) / rateHz));
    },
  );

  test("does not drift: two minutes at 44.1 kHz come out as two minutes", () => {
    const resampler = new Resampler(44_100);
    const second = new Float32Array(44_100);
    let got = 0;
    for (let s = 0; s < 120; s++) got += resampler.push(second).length;
    got += resampler.finish().length;
    expect(Math.abs(got - 120 * 16_000)).toBeLessThan(40);
  });

  test.each([0, 7999, 96_001, 44_100.5, Number.NaN])("refuses %d Hz", (rateHz) => {
    expect(() => new Resampler(rateHz)).toThrow(RangeError);
  });
});
