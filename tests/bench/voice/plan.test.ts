import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { addressWords, commandIds, commands } from "../../../src/intent/phrases";
import { seededRandom } from "../../../src/rehearsal/random";
import { readBackSet, setWith } from "./allowedSets";
import { everyPhrase } from "./clips";
import { nearMiss } from "./texts";
import type { TestVoice } from "./voices";

const voices: readonly TestVoice[] = ["a", "b", "c"].map((name) => ({ engine: "flite", name, speaker: name }));

describe("what the benchmark listens to", () => {
  property.prop([fc.nat(), fc.constantFrom(...addressWords)])(
    "never calls a near miss what begins with a whole command behind the station's own word",
    (seed, address) => {
      const random = seededRandom(seed);
      const words = Array.from({ length: 20 }, () => `${nearMiss(address, random)} `);
      const whole = Object.values(commands).map((command) => `${address} ${command} `);
      expect(words.filter((text) => whole.some((one) => text.startsWith(one)))).toEqual([]);
    },
  );

  test("listens, for every command, for a set that a session has", () => {
    for (const command of commandIds) {
      const set = setWith(command, seededRandom(1));
      expect(set).toContain(command);
      expect(set).toContain("accident");
      expect(set.length).toBeLessThan(commandIds.length);
    }
    expect(readBackSet).toContain("confirm");
  });

  test("has every voice say every command, at each speed and with each address word in turn", () => {
    const clips = everyPhrase(voices, commandIds, false);
    expect(clips).toHaveLength(voices.length * commandIds.length);
    const first = clips.filter(({ voice }) => voice === voices[0]);
    const combinations = new Set(first.map(({ stretch, address }) => `${stretch} ${address}`));
    expect(combinations.size).toBe(9);
    expect(new Set(clips.map(({ seed }) => seed)).size).toBe(clips.length);
  });
});
