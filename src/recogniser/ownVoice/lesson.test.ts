/** Three golden phrases, taught and crossed. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { CommandId } from "../../intent/phrases";
import { PhraseNet } from "../network/phraseNet";
import { shippedModel } from "../network/shippedModel";
import type { Head } from "../network/weightsOf";
import { resample } from "../sound/resample";
import { readWav } from "../sound/wav";
import { Joint } from "./joint";
import { learnVoice, outputsOf, type Take } from "./learn";
import { lessonOf, type SaidPhrase } from "./lesson";
import { atPace, crossed, middleOf, type Said } from "./splice";
import { momentsOf } from "./summaries";

const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
const net = new PhraseNet(model);
const read = readWav(readFileSync("tests/journeys/threePhrases.wav"));
if (!read.ok) throw new Error(read.message);
const recording = resample(read.sound.samples, read.sound.rateHz);

/** Each begins 400 ms into its part of the recording. */
const parts: readonly (readonly [CommandId, number, number])[] = [
  ["back", 0, 1650],
  ["accident", 3400, 1700],
  ["howLong", 7150, 1600],
];
const phrases = parts.map(([command, fromMs, longMs]): SaidPhrase => {
  const sound = recording.slice(16 * fromMs, 16 * (fromMs + longMs + 900));
  return { command, sound, startMs: 400, endMs: 400 + longMs };
});
const heard = ({ sound, endMs }: Said, command: CommandId): Take => ({
  command,
  endMs,
  moments: momentsOf(net, sound),
});
const before: SaidPhrase[] = [];
const lessons = [1, 0.95, 1.05].flatMap((pace) =>
  phrases.map((phrase) => {
    const said = { command: phrase.command, ...atPace(phrase, pace) };
    const lesson = lessonOf(model, net, "station", said, before, before.length);
    before.push(said);
    return { clean: heard(said, said.command), ...lesson };
  }),
);

describe("a take of a phrase", () => {
  test("teaches crossings with another phrase both ways, from the second phrase on", () => {
    expect(lessons.map(({ crossings }) => crossings.length)).toEqual([0, 2, 2, 2, 2, 2, 2, 2, 2]);
  });

  test("teaches its phrase slower and quicker by turns, and over a machine", () => {
    const ends = lessons.slice(0, 2).map(({ clean, paced }) => paced.endMs / clean.endMs);
    expect(ends).toEqual([expect.closeTo(1 / 0.92, 6), expect.closeTo(1 / 1.08, 6)]);
    const [{ clean, noisy }] = lessons as [(typeof lessons)[number]];
    expect(noisy.endMs).toBe(clean.endMs);
    expect(noisy.moments[10]?.embedding).not.toEqual(clean.moments[10]?.embedding);
  });
});

describe("what crossings teach", () => {
  const takes = lessons.flatMap(({ clean, noisy, paced }) => [clean, noisy, paced]);
  const learnt = (crossings: readonly Float32Array[]) => learnVoice(model, "station", takes, crossings, []).head;
  const [plain, wiser] = [learnt([]), learnt(lessons.flatMap(({ crossings }) => crossings))];
  /** How likely the likeliest moment is any phrase at all. */
  const surest = (head: Head, { moments }: Take): number => {
    const joint = new Joint(head, outputsOf(model));
    return Math.max(
      ...moments.map(({ summary }) => {
        joint.see(summary);
        return 1 - joint.none;
      }),
    );
  };
  const crossings = phrases.flatMap((begun) =>
    phrases
      .filter((ended) => ended !== begun)
      .map((ended) => {
        const middle = ({ command }: SaidPhrase) => middleOf("station", command, "en");
        // Cut a little elsewhere than any that was learnt.
        return heard(crossed(begun, ended, [middle(begun) + 0.05, middle(ended) + 0.05]), begun.command);
      }),
  );
  const chances = (head: Head, of: readonly Take[]) => of.map((one) => surest(head, one));
  const mean = (numbers: readonly number[]) => numbers.reduce((sum, x) => sum + x, 0) / numbers.length;

  test("makes another crossing a tenth as likely to be taken for a phrase, or less", () => {
    expect(mean(chances(wiser, crossings))).toBeLessThan(0.1 * mean(chances(plain, crossings)));
  });

  test("leaves the phrases themselves all but certain", () => {
    const said = phrases.map((phrase) => heard(phrase, phrase.command));
    expect(Math.min(...chances(wiser, said))).toBeGreaterThan(0.98);
  });
});
