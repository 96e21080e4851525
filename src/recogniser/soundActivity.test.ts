import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { SoundActivity } from "./soundActivity";

const rateHz = 16_000;
const tone = (amplitude: number, ms: number) =>
  Float32Array.from({ length: ms * 16 }, (_, n) => amplitude * Math.sin(n / 2));
const changesOf = (...parts: readonly (readonly [amplitude: number, ms: number])[]) => {
  const activity = new SoundActivity(rateHz);
  return parts.flatMap(([amplitude, ms]) => activity.take(tone(amplitude, ms)));
};

describe("noticing sound", () => {
  test("a word in a quiet room is sound, then speech, then neither", () => {
    const changes = changesOf([0.001, 1000], [0.2, 500], [0.001, 1000]);
    expect(changes).toEqual(["soundstart", "speechstart", "speechend", "soundend"]);
  });

  test("a click is sound but not speech", () => {
    expect(changesOf([0.001, 1000], [0.5, 40], [0.001, 1000])).toEqual(["soundstart", "soundend"]);
  });

  test("a steady hum becomes the room", () => {
    const changes = changesOf([0.001, 1000], [0.05, 30_000]);
    expect(changes.at(-1)).toBe("soundend");
  });

  test("silence is nothing", () => {
    expect(changesOf([0, 5000])).toEqual([]);
  });

  const anyPart = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 1, max: 900 }));
  property.prop([fc.array(anyPart, { maxLength: 12 })])(
    "starts and ends come in pairs, speech inside sound",
    (parts) => {
      const open: string[] = [];
      for (const change of changesOf(...parts)) {
        const what = change.replace(/start|end/, "");
        if (change.endsWith("start")) open.push(what);
        else expect(open.pop()).toBe(what);
        expect([[], ["sound"], ["sound", "speech"]]).toContainEqual(open);
      }
    },
  );
});
