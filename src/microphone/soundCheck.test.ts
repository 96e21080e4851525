import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import type { Level } from "./level";
import {
  artistDb,
  beginSoundCheck,
  type SoundCheck,
  type SoundCircumstances,
  tookLevel,
  triedPhrases,
  understood,
} from "./soundCheck";

const well: SoundCircumstances = { noiseSuppression: false, isBusy: false };
const at = (db: number): Level => ({ rms: 10 ** (db / 20), peak: Math.min(1, 3 * 10 ** (db / 20)) });
const silence: Level = { rms: 0, peak: 0 };
const levels = (check: SoundCheck, level: Level, tenths: number, around = well): SoundCheck =>
  Array.from({ length: tenths }, () => level).reduce((so, each) => tookLevel(so, each, around), check);

/** A machine at one level, then each phrase for a second at another over it; `missed` are never understood. */
function checked(machineDb: number, speechDb: number, missed: readonly string[] = [], around = well) {
  const both = at(10 * Math.log10(10 ** (machineDb / 10) + 10 ** (speechDb / 10)));
  let check = levels(beginSoundCheck, at(machineDb), 40, around);
  for (const phrase of triedPhrases) {
    check = levels(levels(check, at(machineDb), 8, around), both, 11, around);
    check = missed.includes(phrase) ? levels(check, at(machineDb), 101, around) : understood(check, phrase, around);
  }
  return check.verdict;
}

describe("the sound check", () => {
  test("listens to the machine alone, asks for three phrases, then says how it is", () => {
    const machine = levels(beginSoundCheck, at(-50), 39);
    expect(machine.stage).toBe("machine");
    const asked = levels(machine, at(-50), 1);
    expect([asked.stage, asked.phrase]).toEqual(["phrase", 0]);
    expect(understood(asked, "done", well).phrase).toBe(1);
  });

  test("measures speech above the machine to half a decibel, and calls 25 dB with all three understood good", () => {
    const verdict = checked(-50, -25);
    expect(verdict?.ratioDb).toBeCloseTo(25, 0);
    expect(verdict).toMatchObject({ grade: "good", understood: 3, advice: [] });
  });

  test("tells how loud the voice is without the machine, unless the device changes levels or it was heard badly", () => {
    const db = (verdict: SoundCheck["verdict"], changesLevels = false) => verdict && artistDb(verdict, changesLevels);
    expect(db(checked(-40, -26))).toBeCloseTo(-26, 0);
    expect(db(checked(-40, -26), true)).toBeNull();
    expect(db(checked(-30, -26))).toBeNull();
  });

  test("advises to come nearer between ten and twenty decibels", () => {
    expect(checked(-40, -26)).toMatchObject({ grade: "fair", advice: ["nearer"] });
  });

  test("advises a close microphone where speech hardly stands above the machine, even if all was understood", () => {
    expect(checked(-30, -26)).toMatchObject({ grade: "poor", understood: 3, advice: ["closeMicrophone"] });
  });

  test("names a microphone that gives nothing at all", () => {
    const silent = levels(beginSoundCheck, silence, 40 + 3 * 120);
    expect(silent.verdict).toMatchObject({ grade: "poor", ratioDb: null, advice: ["dead"] });
  });

  test("names a microphone that is driven too hard, and one that is too quiet", () => {
    expect(checked(-30, -3)?.advice).toContain("clipped");
    expect(checked(-75, -50)?.advice).toContain("tooQuiet");
  });

  test("offers to be taught where speech is clear and a phrase is still not understood", () => {
    expect(checked(-50, -25, ["howLong"])).toMatchObject({ grade: "fair", understood: 2, advice: ["teach"] });
    expect(checked(-50, -25, ["howLong", "done"])).toMatchObject({ grade: "poor", understood: 1 });
  });

  test("says that the device changes the sound, and that it is too busy", () => {
    expect(checked(-50, -25, [], { noiseSuppression: true, isBusy: true })).toMatchObject({
      grade: "fair",
      advice: ["processed", "busyDevice"],
    });
  });

  test("counts only the phrase that was asked for", () => {
    const asked = levels(beginSoundCheck, at(-50), 40);
    expect(understood(asked, "accident", well)).toBe(asked);
  });

  property.prop([
    fc.array(
      fc.record({ rms: fc.double({ min: 0, max: 1, noNaN: true }), peak: fc.double({ min: 0, max: 1, noNaN: true }) }),
      {
        minLength: 400,
        maxLength: 410,
      },
    ),
  ])("comes to a verdict within three quarters of a minute whatever comes in", (sounds) => {
    const { verdict } = sounds.reduce((check, level) => tookLevel(check, level, well), beginSoundCheck);
    expect(verdict?.grade).toBe("poor");
    expect(verdict?.ratioDb === null || Number.isFinite(verdict?.ratioDb)).toBe(true);
  });
});
