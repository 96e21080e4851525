/**
 * Outside check: audio/make/golden holds a recording and the numbers that a separate implementation in numpy
 * (audio/make/reference.py) gets from it, with the shipped model and with a made-up one of other sizes, kept as halves.
 * Tolerances are those of audio/make/MODEL.md.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { madeModel, wide } from "../../../tests/support/madeModel";
import { MelFrames, melCount, rowsPerStep, spanSamples, stepSamples } from "../frontEnd/melFrames";
import { readWav } from "../sound/wav";
import { loadModel, type PhraseModel } from "./loadModel";
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
const recording = readWav(golden("utterance.wav"));
const samples = recording.ok ? recording.sound.samples : new Float32Array();
const steps = Array.from({ length: Math.floor((samples.length - spanSamples) / stepSamples) + 1 }, (_, n) => n);
const madeUp = madeModel(wide);
const models = {
  shipped: { loaded: await shippedModel(), file: "expected.json" },
  wide: { loaded: await loadModel(madeUp.description, madeUp.binary), file: "wide.json" },
};
type Decisions = ReturnType<typeof decisionsOf>;
/** At every step that can be decided, the probabilities behind each address word. */
function decisionsOf(model: PhraseModel, plain: boolean) {
  const net = new PhraseNet(model, plain);
  const out = new Float64Array(net.commandCount);
  return steps.flatMap((hop) => {
    if (!net.step(samples, hop * stepSamples)) return [];
    const each = model.file.outputs.addressWords.map((_, address) => {
      net.probabilities(address, out);
      return out.slice();
    });
    return [{ hop, each }];
  });
}
const furthest = (ours: ArrayLike<number>, theirs: readonly number[]) =>
  theirs.reduce((most, v, n) => Math.max(most, Math.abs(v - (ours[n] ?? Number.NaN))), 0);

describe.each([
  ["shipped", "in WebAssembly", false],
  ["shipped", "in plain JavaScript", true],
  ["wide", "in WebAssembly", false],
] as const)("the %s phrase model as a stream, against the reference in numpy, %s", (which, _, plain) => {
  const { loaded, file } = models[which];
  if (!loaded.ok) throw new Error(loaded.message);
  const { model } = loaded;
  const expected: Golden = JSON.parse(golden(file).toString("utf8"));

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
    const decisions = decisionsOf(model, plain);
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

test.each(["shipped", "wide"] as const)(
  "the %s model's probabilities in WebAssembly, whose gates are approximate, are those in plain JavaScript to 1e-4",
  (which) => {
    const { loaded } = models[which];
    if (!loaded.ok) throw new Error(loaded.message);
    const [fast, plain] = [false, true].map((isPlain) => decisionsOf(loaded.model, isPlain)) as [Decisions, Decisions];
    const errors = fast.flatMap(({ each }, d) => each.map((p, a) => furthest(p, [...(plain[d]?.each[a] ?? [])])));
    expect(errors.length).toBe(45);
    expect(Math.max(...errors)).toBeLessThan(1e-4);
  },
);
