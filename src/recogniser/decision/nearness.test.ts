import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import type { CommandId } from "../../intent/phrases";
import { Nearness } from "./nearness";

const step = 1280;
/** Noise of one level for so many steps of 80 ms. */
function sounds(near: Nearness, db: number, steps: number): void {
  const sound = new Float32Array(step).fill(10 ** (db / 20));
  for (let n = 0; n < steps; n++) near.hear(sound, 0, step);
}
/** A phrase of over a second in a quiet room, or over a machine. */
function says(near: Nearness, command: CommandId, db: number, atMs: number, machineDb = -90): boolean {
  sounds(near, machineDb, 60);
  sounds(near, 10 * Math.log10(10 ** (db / 10) + 10 ** (machineDb / 10)), 14);
  sounds(near, machineDb, 3);
  return near.admits(command, atMs);
}
const checkedAt = (speechDb: number): Nearness => {
  const near = new Nearness();
  near.artist = speechDb;
  return near;
};

describe("whether a phrase came from where the artist speaks", () => {
  test("takes everything while it is not known how loud the artist is", () => {
    expect(says(new Nearness(), "done", -70, 0)).toBe(true);
  });

  test("takes what is up to 6 dB fainter than at the sound check, twice the distance, and asks about the rest", () => {
    expect(says(checkedAt(-26), "done", -31.5, 0)).toBe(true);
    expect(says(checkedAt(-26), "done", -32.5, 0)).toBe(false);
  });

  test("does not take a machine under the phrase for the voice", () => {
    expect(says(checkedAt(-26), "done", -36, 0, -33)).toBe(false);
    expect(says(checkedAt(-26), "done", -28, 0, -33)).toBe(true);
  });

  test("takes the same phrase, or yes or no, from there within ten seconds of asking, and no other", () => {
    for (const answer of ["done", "yes", "no"] as const) {
      const near = checkedAt(-26);
      expect(says(near, "done", -40, 0)).toBe(false);
      expect(says(near, answer, -40, 9_000)).toBe(true);
    }
    const near = checkedAt(-26);
    says(near, "done", -40, 0);
    expect(says(near, "back", -40, 9_000)).toBe(false);
    expect(says(near, "back", -40, 30_000)).toBe(false);
  });

  test("asks about the next one from there again: one answer is not a new place", () => {
    const near = checkedAt(-26);
    says(near, "done", -40, 0);
    expect(says(near, "yes", -40, 3_000)).toBe(true);
    expect(says(near, "back", -40, 6_000)).toBe(false);
  });

  test("stops asking once three of the last five that acted came from farther away: the microphone has slipped", () => {
    const near = checkedAt(-26);
    for (let n = 0; n < 3; n++) {
      expect(says(near, "done", -36, 60_000 * n)).toBe(false);
      expect(says(near, "yes", -36, 60_000 * n + 4_000)).toBe(true);
    }
    expect(says(near, "done", -36, 240_000)).toBe(true);
  });

  test("knows nothing of the room before a gap in the sound", () => {
    const near = checkedAt(-26);
    sounds(near, -26, 75);
    near.reset();
    expect(says(near, "done", -40, 0)).toBe(false);
  });

  property.prop([fc.double({ min: -60, max: -10, noNaN: true }), fc.double({ min: -5.5, max: 20, noNaN: true })])(
    "never asks who is as loud as at the sound check, or up to 5.5 dB fainter, however loud that is",
    (artist, more) => {
      const near = checkedAt(artist);
      for (let n = 0; n < 8; n++) expect(says(near, "done", artist + more, 20_000 * n)).toBe(true);
    },
  );
});
