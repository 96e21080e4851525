import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { addressWords, commands } from "../../src/intent/phrases";

const text = (name: string) => readFileSync(new URL(name, import.meta.url), "utf8");
const names = z.array(z.string());
const HeldOut = z.object({ test: z.looseObject({}), development: z.looseObject({}) });
const packaged = z.looseObject({ package: z.string(), licence: z.string() });
const Manifest = z.object({
  "espeak-ng": packaged.extend({ variants: names }),
  flite: packaged.extend({ pitchHz: z.record(z.string(), z.number()) }),
  festival: packaged.extend({ voices: z.record(z.string(), z.string()) }),
  gnuspeech: packaged,
  rhvoice: packaged.extend({ voices: names }),
  pico: packaged.extend({ voices: names }),
  accents: z.record(z.string(), packaged),
  train: z.object({
    seed: z.int(),
    nearMisses: z.int(),
    nearWords: z.int(),
    phraseClips: z.record(z.string(), z.int().positive()),
    share: z.record(z.string(), z.number().positive()),
  }),
  fineTune: z.object({ seed: z.int(), nearMisses: z.int(), phraseClips: z.record(z.string(), z.int().positive()) }),
});
const heldOut = HeldOut.parse(JSON.parse(text("held-out.json")));
const manifest = Manifest.parse(JSON.parse(text("manifest.json")));
const setAside = [heldOut.test, heldOut.development].flatMap((side) => Object.values(side).flat());
const trained = [manifest.train.phraseClips, manifest.train.share, manifest.fineTune.phraseClips].flatMap(Object.keys);

describe("the voices that train the phrase model", () => {
  test("leaves the list of held-out voices as it was before the first training, by the digest on the model card", () => {
    const digest = createHash("sha256").update(text("held-out.json")).digest("hex");
    expect(text("MODEL_CARD.md")).toContain(digest);
  });

  test("trains with no voice that is set aside", () => {
    expect(trained.filter((voice) => setAside.includes(voice))).toEqual([]);
  });

  test("has words that are nearly those of every phrase, and none that is the word itself", () => {
    const { near } = z.object({ near: z.record(z.string(), names) }).parse(JSON.parse(text("near-words.json")));
    for (const phrase of [...Object.values(commands), ...addressWords]) {
      expect(
        phrase
          .toLowerCase()
          .split(" ")
          .some((word) => (near[word]?.length ?? 0) > 10),
      ).toBe(true);
    }
    expect(Object.entries(near).filter(([word, others]) => others.includes(word))).toEqual([]);
  });

  test("makes the stored sounds for teaching with no voice that is set aside", () => {
    const list = /variants = \[([^\]]*)\]/.exec(text("ownVoice/negatives.ts"))?.[1] ?? "";
    const variants = [...list.matchAll(/"([^"]+)"/g)].map(([, name]) => name);
    expect(variants.length).toBeGreaterThan(5);
    expect(variants.filter((variant) => setAside.includes(variant))).toEqual([]);
  });

  test("names a package with its version, and a licence, for every voice that it trains with", () => {
    const own = [
      "espeak",
      ...Object.keys(manifest.flite.pitchHz),
      ...Object.keys(manifest.festival.voices),
      ...manifest.rhvoice.voices,
      ...manifest.pico.voices,
      "male",
      "large_child",
    ];
    expect(trained.filter((voice) => !own.includes(voice) && !(voice in manifest.accents))).toEqual([]);
    const packages = [
      manifest["espeak-ng"],
      manifest.flite,
      manifest.festival,
      manifest.gnuspeech,
      manifest.rhvoice,
      manifest.pico,
      ...Object.values(manifest.accents),
    ];
    expect(packages.filter((one) => !/ [\d:.]+/.test(one.package) || one.licence.length < 3)).toEqual([]);
  });
});
