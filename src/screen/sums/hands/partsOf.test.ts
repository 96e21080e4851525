/** Everything the hand timer says has a recorded clip, whole or word by word: no voice of the system is needed. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ClipManifest, clipKey, clipsOf } from "../../../announcements/clips";
import { bookFor } from "../../../announcements/phrasebooks";
import { neededMs } from "../../../hands/durations";
import type { HandWords } from "../../../hands/timer";
import { sumsEn } from "../words/en";
import { partsOf } from "./useHandTimer";

const manifest = ClipManifest.parse(JSON.parse(readFileSync("public/clips/en.json", "utf8")));
const { number } = bookFor("en");
const { spoken } = sumsEn.hands;

const longestS = Math.max(...Object.values(neededMs)) / 1000;
const counts: readonly HandWords[] = Array.from({ length: longestS }, (_, s) => ({ code: "count", seconds: s + 1 }));
const shorts: readonly HandWords[] = Array.from({ length: longestS }, (_, s) => ({ code: "short", shortS: s + 1 }));
const rest: readonly HandWords[] = [
  { code: "done", method: "wash" },
  { code: "done", method: "rub" },
  { code: "start-again" },
];

describe("what the hand timer says", () => {
  it("counts in whole clips", () => {
    const pieces = counts.flatMap((words) => clipsOf({ parts: partsOf(words, number, spoken) }, manifest));
    expect(pieces.filter(({ say }) => say !== "clip")).toEqual([]);
  });

  it.each([...rest, ...shorts].map((words) => partsOf(words, number, spoken)))(
    "has a clip for each word of %j",
    (...parts) => {
      const spelledOut = parts
        .flatMap(({ text }) => clipKey(text).split(" "))
        .filter((word) => !Object.hasOwn(manifest.clips, clipKey(word)));
      expect(spelledOut).toEqual([]);
    },
  );
});
