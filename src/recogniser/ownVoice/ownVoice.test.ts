/** Teaching, end to end in Node: a golden utterance said three times, and words that are in no list. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { madeModel, wide } from "../../../tests/support/madeModel";
import { Ear } from "../ear";
import { loadModel } from "../network/loadModel";
import { shippedModel } from "../network/shippedModel";
import { headOf } from "../network/weightsOf";
import { resample } from "../sound/resample";
import { readWav } from "../sound/wav";
import { type OwnVoice, packHead, packTemplate, readOwnVoice, unpackHead, unpackTemplate } from "./ownVoice";
import { Teacher } from "./teacher";

const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
const rateHz = 16_000;

/** The first of three phrases of voices that the model was not trained on; stands for words that it does not know. */
const read = readWav(readFileSync("tests/journeys/threePhrases.wav"));
if (!read.ok) throw new Error(read.message);
const recording = resample(read.sound.samples, read.sound.rateHz);
const loud = (sound: Float32Array, by: number) => sound.map((x) => x * by);
/** Backwards no language has them. */
const strange = recording.slice(0, 2 * rateHz).toReversed();
const padded = (sound: Float32Array) => {
  const longer = new Float32Array(sound.length + rateHz);
  longer.set(sound, rateHz / 2);
  return longer;
};

describe("words of the artist's own", () => {
  const teacher = new Teacher(model, "station", []);
  const answers = [1, 0.7, 1.2].map((by) => teacher.take("moreInk", true, padded(loud(strange, by)), rateHz));
  const own = teacher.learn("2026-11-25T12:00:00Z", "2026-11-25T12:10:00Z");

  test("are learnt from three takes, whatever they sound like", () => {
    expect(answers).toEqual([{ ok: true }, { ok: true }, { ok: true }]);
    expect(own).toMatchObject({ head: null, words: [{ command: "moreInk" }] });
    expect(readOwnVoice(JSON.parse(JSON.stringify(own)))).toEqual(own);
  });

  test("are then heard as their command, and were not before", () => {
    const hear = (with_: OwnVoice | null) => {
      const ear = new Ear({ model, address: "station", own: with_ });
      ear.allow(["moreInk", "back"]);
      const heard = [...ear.listen(padded(loud(strange, 0.9))), ...ear.finish()];
      return heard.flatMap((one) => (one.kind === "understood" ? [one.command] : []));
    };
    expect(hear(null)).toEqual([]);
    expect(hear(own)).toEqual(["moreInk"]);
    expect(hear(own && { ...own, model: "0".repeat(64) })).toEqual([]);
  });

  test("refuse a take that is something else", () => {
    const other = new Teacher(model, "station", []);
    other.take("moreInk", true, padded(strange), rateHz);
    expect(other.take("moreInk", true, padded(recording.slice(3 * rateHz, 5 * rateHz)), rateHz)).toMatchObject({
      ok: false,
    });
  });
});

describe("a take of a phrase", () => {
  const times = ["2026-11-25T12:00:00Z", "2026-11-25T12:10:00Z"] as const;
  /** "Previous step" and "accident alarm", where they lie in the recording. */
  const takes = [
    ["back", 0, 2.6],
    ["accident", 3.4, 5.9],
  ] as const;
  const taught = (studiesAtOnce: boolean) => {
    const teacher = new Teacher(model, "station", []);
    for (const [command, from, to] of takes) {
      teacher.take(command, false, recording.slice(from * rateHz, to * rateHz), rateHz);
      if (studiesAtOnce) teacher.study();
    }
    return teacher.learn(...times);
  };

  test("teaches the same whether it is studied when it is given or at the end", () => {
    const own = taught(true);
    expect(own).toMatchObject({ head: { bias: expect.any(String) }, figures: { takes: 2 } });
    expect(taught(false)).toEqual(own);
  });
});

describe("what was taught", () => {
  test("packs and unpacks its head to the last bit, and a template to a hundredth", () => {
    const head = headOf(model);
    expect(unpackHead(packHead(head), head)).toEqual({
      weights: Float32Array.from(head.weights),
      bias: Float32Array.from(head.bias),
    });
    const steps = [Float32Array.of(0.5, -0.25), Float32Array.of(-1, 1)];
    const back = unpackTemplate(packTemplate({ steps }), 2).steps.flatMap((step) => [...step]);
    expect(back.map((x) => Math.round(x * 50) / 50)).toEqual([0.5, -0.26, -1, 1].map((x) => Math.round(x * 50) / 50));
  });

  test("fits a model of other sizes", async () => {
    const made = madeModel(wide);
    const other = await loadModel(made.description, made.binary);
    if (!other.ok) throw new Error(other.message);
    const head = headOf(other.model);
    const teacher = new Teacher(other.model, "station", []);
    expect(teacher.take("moreInk", true, padded(strange), rateHz)).toEqual({ ok: true });
    const own = { ...teacher.learn("2026-11-25T12:00:00Z", "2026-11-25T12:10:00Z"), head: packHead(head) };
    const read = readOwnVoice(JSON.parse(JSON.stringify(own)));
    expect(read?.words[0]?.size).toBe(wide.channels[3]);
    expect(read?.head && unpackHead(read.head, head)).toEqual(head);
    expect(new Ear({ model: other.model, address: "station", own: read }).listen(padded(strange))).toEqual([]);
  });

  test("is refused where it is not one, or has another shape", () => {
    expect(readOwnVoice({ format: "gloveside-own-voice/1" })).toBeNull();
    expect(readOwnVoice("x")).toBeNull();
    const head = headOf(model);
    expect(unpackHead({ weights: "AAAA", bias: "" }, head)).toBeNull();
  });

  test("is nothing when no take was good", () => {
    expect(new Teacher(model, "station", []).learn("2026-11-25T12:00:00Z", "2026-11-25T12:10:00Z")).toBeNull();
  });
});
