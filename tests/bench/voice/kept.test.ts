import { rmSync } from "node:fs";
import { expect, test } from "vitest";
import { kept, makingMs } from "./kept";

test("makes a sound once, says how long that took, and gives the same sound again", () => {
  const name = `trial/${process.pid}`;
  rmSync(`out/bench/${name}.f32`, { force: true });
  const sound = Float32Array.of(0, 1 / 3, -1, 1e-9);
  const made = kept(name, () => {
    const until = performance.now() + 20;
    while (performance.now() < until);
    return sound.subarray(1);
  });
  const spent = makingMs();
  expect(made).toEqual(sound.subarray(1));
  expect(spent).toBeGreaterThanOrEqual(20);
  expect(
    kept(name, () => {
      throw new Error("made twice");
    }),
  ).toEqual(sound.subarray(1));
  expect(makingMs()).toBe(spent);
  rmSync(`out/bench/${name}.f32`);
});
