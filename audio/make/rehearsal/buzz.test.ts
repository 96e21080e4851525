import { expect, test } from "vitest";
import { buzz, buzzRms, penMachine } from "./buzz";

const rateHz = 16_000;
const always = { ...penMachine, passSec: [60, 60], restSec: [1, 1] } as const;
const rms = (sound: Float32Array) => Math.sqrt(sound.reduce((sum, x) => sum + x * x, 0) / sound.length);

test("the machine runs at the level that the decibels are counted from", () => {
  const machine = buzz(rateHz, 3, always);
  machine.take(rateHz);
  expect(20 * Math.log10(rms(machine.take(4 * rateHz)) / buzzRms)).toBeCloseTo(0, 0);
});

test("the same seed gives the same sound, however it is cut", () => {
  const whole = buzz(rateHz, 7).take(4_000);
  const machine = buzz(rateHz, 7);
  const cut = [...machine.take(1_234), ...machine.take(2_766)];
  expect(cut).toEqual([...whole]);
  expect([...buzz(rateHz, 8).take(4_000)]).not.toEqual([...whole]);
});

test("it rests between passes", () => {
  const machine = buzz(rateHz, 1, { ...penMachine, passSec: [1, 1], restSec: [1, 1] });
  const seconds = [0, 1, 2, 3].map(() => rms(machine.take(rateHz).subarray(rateHz / 2)));
  expect(seconds.map((level) => level > buzzRms / 10)).toEqual([true, false, true, false]);
});
