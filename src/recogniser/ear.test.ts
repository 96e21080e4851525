import { readFileSync } from "node:fs";
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { commandIds } from "../intent/phrases";
import { sameForAll } from "./decision/settings";
import { Ear } from "./ear";
import type { Heard } from "./heard";
import { shippedModel } from "./network/shippedModel";
import { readWav } from "./sound/wav";

const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
const file = readWav(readFileSync(new URL("../../audio/make/golden/utterance.wav", import.meta.url)));
const sound = file.ok ? file.sound.samples : new Float32Array();

/** Thresholds so low that something is always heard: these tests are about time and cutting, not about skill. */
const credulous = { thresholds: sameForAll(0.004), refractoryMs: 160, rearmBelow: 1.1 };
const earWith = (rateHz = 16_000) => {
  const ear = new Ear({ model, address: "station", rateHz, settings: credulous });
  ear.allow(commandIds);
  return ear;
};
function hearInPieces(ear: Ear, samples: Float32Array, cuts: readonly number[]): readonly Heard[] {
  const heard: Heard[] = [];
  let at = 0;
  for (const cut of [...cuts, samples.length]) {
    heard.push(...ear.listen(samples.subarray(at, at + cut)));
    at = Math.min(samples.length, at + cut);
  }
  return [...heard, ...ear.finish()];
}

describe("the ear", () => {
  const whole = hearInPieces(earWith(), sound, []);

  test("hears something at all with such low thresholds", () => {
    expect(whole.filter((h) => h.kind === "understood").length).toBeGreaterThan(0);
  });

  property.prop([fc.array(fc.integer({ min: 1, max: 20_000 }), { maxLength: 30 })], { numRuns: 5 })(
    "gives the same answers at the same times however the sound is cut",
    (cuts) => {
      expect(hearInPieces(earWith(), sound, cuts)).toEqual(whole);
    },
  );

  test("gives the same answers in the chunks that a 48 kHz worklet sends", () => {
    const at48k = Float32Array.from({ length: sound.length * 3 }, (_, n) => sound[Math.floor(n / 3)] ?? 0);
    const inChunks = hearInPieces(earWith(48_000), at48k, Array(200).fill(1024));
    expect(inChunks).toEqual(hearInPieces(earWith(48_000), at48k, []));
  });

  test("stamps answers with the time of the sound, in whole steps of 80 ms and the reach of its last window", () => {
    expect(whole.every((h) => h.atMs > 0 && Math.abs(((h.atMs - 22) / 80) % 1) < 1e-9)).toBe(true);
  });

  describe("told that the companion is silent again while sound from before that still comes in", () => {
    const speaking = { ...credulous, speakingAbove: 1.1 };
    const tone = new Float32Array(1600).fill(0.1);
    /** The companion speaks for the first three seconds of the sound; the ear is told so until `toldUntil` samples have come. */
    const heardAt = (toldUntil: number): readonly number[] => {
      const ear = new Ear({ model, address: "station", settings: speaking });
      ear.allow(commandIds.filter((command) => command !== "accident"));
      ear.guard([]);
      const all: Heard[] = [];
      for (let at = 0; at < sound.length; at += 1600) {
        if (at >= toldUntil) ear.guard(null);
        all.push(...ear.listen(sound.slice(at, at + 1600), at < 48_000 ? tone : null));
      }
      return all.filter(({ kind }) => kind === "understood").map(({ atMs }) => atMs);
    };

    test("is as careful as before until that sound has passed and the room has stopped ringing", () => {
      const [first] = heardAt(16_000);
      expect(first).toBeGreaterThanOrEqual(3_700);
    });

    test("hears as it does when it is told in time", () => {
      expect(heardAt(16_000)).toEqual(heardAt(59_200));
      expect(heardAt(16_000).length).toBeGreaterThan(0);
    });
  });

  test("hears nothing while nothing is allowed", () => {
    const ear = new Ear({ model, address: "station", settings: credulous });
    expect(hearInPieces(ear, sound, [])).toEqual([]);
  });

  test("says after a gap what it would have said at the start, later by what came before", () => {
    const ear = earWith();
    ear.listen(sound.subarray(0, 16_000));
    ear.gap(500);
    expect(ear.heardMs).toBe(1500);
    const shifted = hearInPieces(ear, sound, []).map((h) => ({ ...h, atMs: h.atMs - 1500 }));
    expect(shifted).toEqual(whole);
  });

  test("hears nothing in silence, with the model's own thresholds", () => {
    const ear = new Ear({ model, address: "station" });
    ear.allow(commandIds);
    expect(hearInPieces(ear, new Float32Array(5 * 16_000), [])).toEqual([]);
  });
});
