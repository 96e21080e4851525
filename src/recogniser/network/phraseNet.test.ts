/**
 * Outside check: audio/make/golden holds a recording and the numbers that a separate implementation in numpy
 * (audio/make/reference.py) gets from it. Tolerances are those of audio/make/MODEL.md.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { MelFrames, melCount, rowsPerStep, spanSamples, stepSamples } from "../frontEnd/melFrames";
import { readWav } from "../sound/wav";
import { PhraseNet } from "./phraseNet";
import { shippedModel } from "./shippedModel";

interface Golden {
  readonly model: string;
  readonly melFrames: Readonly<Record<string, readonly number[]>>;
  readonly embedding: Readonly<Record<string, readonly number[]>>;
  readonly firstDecisionHop: number;
  readonly probabilities: readonly (readonly (readonly number[])[])[];
}
const golden = (name: string) => readFileSync(new URL(`../../../audio/make/golden/${name}`, import.meta.url));
const expected: Golden = JSON.parse(golden("expected.json").toString("utf8"));
const recording = readWav(golden("utterance.wav"));
const samples = recording.ok ? recording.sound.samples : new Float32Array();
const steps = Array.from({ length: Math.floor((samples.length - spanSamples) / stepSamples) + 1 }, (_, n) => n);
const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
const furthest = (ours: ArrayLike<number>, theirs: readonly number[]) =>
  theirs.reduce((most, v, n) => Math.max(most, Math.abs(v - (ours[n] ?? Number.NaN))), 0);

describe.each([
  ["in WebAssembly", false],
  ["in plain JavaScript", true],
])("the phrase model as a stream, against the reference in numpy, %s", (_, plain) => {
  test("is the model that the reference used", () => {
    expect(model.digest).toBe(expected.model);
  });

  test("gives the same mel frames", () => {
    const mel = new MelFrames(model.numbers(model.file.frontEnd.melMatrix));
    const rows = steps.flatMap((n) => {
      const step = new Float32Array(rowsPerStep * melCount);
      mel.step(samples, n * stepSamples, step);
      return [...step];
    });
    const errors = Object.entries(expected.melFrames)
      .filter(([frame]) => Number(frame) < steps.length * rowsPerStep)
      .map(([frame, theirs]) => furthest(rows.slice(Number(frame) * melCount), theirs));
    expect(errors.length).toBeGreaterThan(20);
    expect(Math.max(...errors)).toBeLessThan(1e-4);
  });

  test("gives the same embeddings", () => {
    const net = new PhraseNet(model, plain);
    const embeddings = steps.flatMap((n) => {
      const before = net.embeddingsSeen;
      net.step(samples, n * stepSamples);
      return net.embeddingsSeen > before ? [net.embedding.slice()] : [];
    });
    const errors = Object.entries(expected.embedding).map(([j, theirs]) =>
      furthest(embeddings[Number(j)] ?? [], theirs),
    );
    expect(errors.length).toBe(Object.keys(expected.embedding).length);
    expect(Math.max(...errors)).toBeLessThan(1e-3);
  });

  test("gives the same probabilities, at the same steps", () => {
    const net = new PhraseNet(model, plain);
    const out = new Float64Array(net.commandCount);
    const decisions = steps.flatMap((n) => {
      if (!net.step(samples, n * stepSamples)) return [];
      const each = model.file.outputs.addressWords.map((_, address) => {
        net.probabilities(address, out);
        return out.slice();
      });
      return [{ hop: n, each }];
    });
    expect(decisions.map((d) => d.hop)).toEqual(expected.probabilities.map((_, n) => expected.firstDecisionHop + n));
    const errors = decisions.flatMap(({ each }, d) =>
      each.map((p, a) => furthest(p, expected.probabilities[d]?.[a] ?? [])),
    );
    expect(Math.max(...errors)).toBeLessThan(1e-3);
  });

  test("hears silence the second time as the first, whatever came between", () => {
    const net = new PhraseNet(model, plain);
    const out = new Float64Array(net.commandCount);
    const oneStepAfterSilence = () => {
      net.hearSilence();
      net.step(samples, 20 * stepSamples);
      net.probabilities(0, out);
      return [...out];
    };
    const first = oneStepAfterSilence();
    for (const n of steps) net.step(samples, n * stepSamples);
    expect(oneStepAfterSilence()).toEqual(first);
  });

  test("gives the same again after a reset", () => {
    const net = new PhraseNet(model, plain);
    const out = new Float64Array(net.commandCount);
    const run = () => {
      for (const n of steps) net.step(samples, n * stepSamples);
      net.probabilities(0, out);
      return [...out];
    };
    const first = run();
    net.reset();
    expect(run()).toEqual(first);
  });
});
