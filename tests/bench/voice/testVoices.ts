/**
 * The voices of the benchmark: those that audio/make/held-out.json sets aside, spoken by Debian's synthesisers. An engine
 * that is not installed is named and left out, never replaced by another. Clips are kept in out/bench.
 */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, renameSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { readWav, resample, sampleRateHz } from "../../../src/recogniser";

const heldOut = z.object({
  test: z.object({ flite: z.array(z.string()), festival: z.array(z.string()), "espeak-ng": z.array(z.string()) }),
});
const file = new URL("../../../audio/make/held-out.json", import.meta.url);
export const heldOutDigest = createHash("sha256").update(readFileSync(file)).digest("hex");

export type Engine = "flite" | "festival" | "espeak-ng";
export interface TestVoice {
  readonly engine: Engine;
  readonly name: string;
  /** Two synthesisers may have recorded one person; intervals count people. */
  readonly speaker: string;
}

/** How long each sound lasts, times the voice's own. */
export const speeds = { slow: 1.18, natural: 1, quick: 0.85 } as const;
export type Speed = keyof typeof speeds;

export function testVoices(): { readonly voices: readonly TestVoice[]; readonly missing: readonly string[] } {
  const { test } = heldOut.parse(JSON.parse(readFileSync(file, "utf8")));
  const engines = (["flite", "festival", "espeak-ng"] as const).map((engine) => ({ engine, is: isInstalled(engine) }));
  const speakerOf = (name: string) => (name.includes("slt") ? "slt" : name);
  return {
    voices: engines
      .filter(({ is }) => is)
      .flatMap(({ engine }) => test[engine].map((name) => ({ engine, name, speaker: speakerOf(name) }))),
    missing: engines.filter(({ is }) => !is).map(({ engine }) => engine),
  };
}

function isInstalled(engine: Engine): boolean {
  try {
    execFileSync(engine, ["--version"], { stdio: "ignore" });
    return true;
  } catch (error) {
    // flite has no --version and leaves with 1: installed all the same.
    return !(error instanceof Error && "code" in error && error.code === "ENOENT");
  }
}

/** @returns 16 kHz mono, -1..1, silence at both ends cut. Rendered once, kept in `folder`. */
export function said({ engine, name }: TestVoice, words: string, speed: Speed, folder: string): Float32Array {
  const key = `${engine}-${name}-${speed}-${words.replace(/[^a-z]+/gi, "-")}`.slice(0, 120);
  const path = join(folder, `${key}.wav`);
  if (!existsSync(path)) {
    mkdirSync(folder, { recursive: true });
    render(engine, name, words.replaceAll("colour", "color"), speeds[speed], `${path}.part`);
    renameSync(`${path}.part`, path);
  }
  const read = readWav(new Uint8Array(readFileSync(path)));
  if (!read.ok) throw new Error(`${path}: ${read.message}`);
  return trimmed(resample(read.sound.samples, read.sound.rateHz));
}

function render(engine: Engine, name: string, words: string, stretch: number, path: string): void {
  if (engine === "flite") {
    execFileSync("flite", ["-voice", name, "--setf", `duration_stretch=${stretch}`, "-t", words, "-o", path]);
  } else if (engine === "espeak-ng") {
    const pace = String(Math.round(170 / stretch));
    execFileSync("espeak-ng", ["-v", `en-us+${name}`, "-s", pace, "-w", path, words]);
  } else {
    const quoted = (text: string) => `"${text.replace(/[\\"]/g, "\\$&")}"`;
    const script = [
      `(voice_${name})`,
      `(Parameter.set 'Duration_Stretch ${stretch})`,
      `(utt.save.wave (utt.synth (Utterance Text ${quoted(words)})) ${quoted(path)} 'riff)`,
    ];
    execFileSync("festival", ["--pipe"], { input: script.join("\n"), stdio: ["pipe", "ignore", "ignore"] });
  }
}

/** What is 38 dB below the loudest 20 ms, at either end, is cut but for 20 ms. */
export function trimmed(samples: Float32Array): Float32Array {
  const frame = sampleRateHz / 50;
  const levels = Array.from({ length: Math.ceil(samples.length / frame) }, (_, n) => {
    const part = samples.subarray(n * frame, (n + 1) * frame);
    return part.reduce((sum, x) => sum + x * x, 0) / part.length;
  });
  const least = Math.max(...levels) * 10 ** (-38 / 10);
  const first = levels.findIndex((level) => level > least);
  const last = levels.findLastIndex((level) => level > least);
  return first < 0 ? samples : samples.slice(Math.max(0, first - 1) * frame, (last + 2) * frame);
}
