/** What wide.py makes of a model, heard by the ear. Left out, saying so, where there is no Python with numpy. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, test } from "vitest";
import { spanSamples, stepSamples } from "../../src/recogniser/frontEnd/melFrames";
import { PhraseNet } from "../../src/recogniser/network/phraseNet";
import { shippedModel } from "../../src/recogniser/network/shippedModel";
import { readWav } from "../../src/recogniser/sound/wav";
import { tempFolder } from "../../tests/support/tempFolder";

const python = process.env.PYTHON ?? "python3";
const missing = spawnSync(python, ["-c", "import numpy"]).status === 0 ? null : "no Python with numpy";
const recording = readWav(readFileSync(new URL("golden/utterance.wav", import.meta.url)));
const samples = recording.ok ? recording.sound.samples : new Float32Array();

/** The largest probability of any command behind the first address word, step by step. */
async function heardBy(folder: URL): Promise<{ readonly peaks: readonly number[]; readonly channels: number }> {
  const loaded = await shippedModel(folder);
  if (!loaded.ok) throw new Error(loaded.message);
  const net = new PhraseNet(loaded.model);
  const out = new Float64Array(net.commandCount);
  const peaks: number[] = [];
  for (let at = 0; at + spanSamples <= samples.length; at += stepSamples) {
    if (!net.step(samples, at)) continue;
    net.probabilities(0, out);
    peaks.push(Math.max(...out));
  }
  return { peaks, channels: loaded.model.file.stream.embeddingSize };
}

describe.skipIf(missing !== null)(`a widened model${missing ? ` (left out: ${missing})` : ""}`, () => {
  test("hears what the narrower one hears, before it is trained further", async () => {
    const wider = join(tempFolder("wide"), "model");
    const sizes = ["40", "72", "104", "144", "304"];
    const made = spawnSync(python, ["audio/make/wide.py", "public/voice", wider, ...sizes], {
      encoding: "utf8",
      env: { ...process.env, VOICE_LANGUAGE: "en" },
    });
    expect(made.stderr).toBe("");
    const [narrow, wide] = [
      await heardBy(new URL("../../public/voice/", import.meta.url)),
      await heardBy(pathToFileURL(`${wider}/`)),
    ];
    expect(wide.channels).toBe(144);
    expect(Math.max(...narrow.peaks)).toBeGreaterThan(0.5);
    for (const [n, peak] of wide.peaks.entries()) expect(peak).toBeCloseTo(narrow.peaks[n] ?? Number.NaN, 4);
  });
});
