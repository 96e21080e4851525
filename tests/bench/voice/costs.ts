/** What the ear costs: share of one core while it listens, and what a device has to fetch for it. */
import { readdirSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { commandIds } from "../../../src/intent/phrases";
import { Ear, type PhraseModel, sampleRateHz } from "../../../src/recogniser";

const listenSec = 60;

/** @returns 0..1: time of the processor, by its own account, over the time of the sound; waiting does not count. */
export function coreShare(model: PhraseModel, sound: Float32Array): number {
  const ear = new Ear({ model, address: "station" });
  ear.allow(commandIds);
  const second = sound.slice(0, sampleRateHz);
  ear.listen(second);
  const began = process.cpuUsage();
  for (let at = 0; at < listenSec * sampleRateHz; at += 1024) {
    const from = at % (sound.length - 1024);
    ear.listen(sound.subarray(from, from + 1024));
  }
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1e6 / listenSec;
}

/** @returns megabytes (10⁶ bytes) after gzip: the English phrase model, its worker and the capture in the audio thread. */
export async function downloadMb(modelFolder: URL): Promise<number> {
  const files = readdirSync(modelFolder).filter((name) => /^model\.(json|bin)$/.test(name));
  const built = await build({
    entryPoints: ["src/recogniser/engine/ear.worker.ts", "src/microphone/capture.worklet.ts"],
    bundle: true,
    minify: true,
    format: "esm",
    write: false,
    outdir: "out",
    logLevel: "error",
  });
  const parts = [
    ...files.map((name) => readFileSync(new URL(name, modelFolder))),
    ...built.outputFiles.map((f) => f.contents),
  ];
  return parts.reduce((sum, part) => sum + gzipSync(part, { level: 9 }).length, 0) / 1e6;
}
