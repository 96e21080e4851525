import { describe, expect, test } from "vitest";
import type { CommandId } from "../intent/phrases";
import type { Label } from "./act";
import { compare } from "./compare";
import type { StoryLine } from "./story";

const label = (command: CommandId, startMs: number): Label => ({ command, words: "", startMs, endMs: startMs + 1_000 });
const heard = (command: CommandId, atMs: number): StoryLine => ({ kind: "heard", atMs, command, confidence: 0.9 });
const said = [label("done", 10_000), label("yes", 20_000)];

describe("what was heard against what was said", () => {
  test("is faultless when each phrase is heard once, during it or soon after", () => {
    expect(compare(said, [heard("done", 10_900), heard("yes", 22_000)])).toEqual({
      said: 2,
      right: 2,
      missed: [],
      wrong: [],
    });
  });

  test("counts a phrase heard too late as missed, and its answer as wrong", () => {
    const { missed, wrong } = compare(said, [heard("done", 11_000), heard("yes", 23_000)]);
    expect(missed).toEqual([{ atMs: 20_000, said: "yes", heard: null }]);
    expect(wrong).toEqual([{ atMs: 23_000, said: null, heard: "yes" }]);
  });

  test("counts another command as both: the one was missed, the other would act", () => {
    const { right, missed, wrong } = compare(said, [heard("skip", 11_000), heard("yes", 21_000)]);
    expect(right).toBe(1);
    expect(missed).toEqual([{ atMs: 10_000, said: "done", heard: null }]);
    expect(wrong).toEqual([{ atMs: 11_000, said: "done", heard: "skip" }]);
  });

  test("counts a phrase heard twice as wrong once: the second would advance", () => {
    const { right, wrong } = compare(said, [heard("done", 10_900), heard("done", 11_800), heard("yes", 21_000)]);
    expect(right).toBe(2);
    expect(wrong).toEqual([{ atMs: 11_800, said: "done", heard: "done" }]);
  });
});
