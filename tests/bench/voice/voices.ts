/**
 * The voices of the benchmark: those that audio/make/held-out.json sets aside, spoken by Debian's synthesisers and by
 * GnuSpeech. An engine that is not there is named, with how to get it, and left out; never replaced by another.
 */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { z } from "zod";
import { readWav, resample, sampleRateHz } from "../../../src/recogniser";
import { kept } from "./kept";

const file = new URL("../../../audio/make/held-out.json", import.meta.url);
const names = z.array(z.string());
const heldOut = z.object({
  test: z.object({ flite: names, festival: names, gnuspeech: names, "espeak-ng": names, accents: names }),
});
export const heldOutDigest = createHash("sha256").update(readFileSync(file)).digest("hex");

const gnuspeech = resolve(process.env.GNUSPEECH ?? "out/gnuspeech/node_modules/@echogarden/gnuspeech-wasm");
const engines = ["flite", "festival", "gnuspeech", "espeak-ng"] as const;
export type Engine = (typeof engines)[number] | "accents";
const howToGet: Readonly<Record<Engine, string>> = {
  flite: "apt-get install flite",
  festival: "apt-get install festival festvox-us-slt-hts",
  gnuspeech: "npm install --prefix out/gnuspeech @echogarden/gnuspeech-wasm@0.3.0",
  "espeak-ng": "apt-get install espeak-ng",
  accents: "apt-get install python3 festival festvox-suopuhe-lj festvox-itapc16k",
};
/** Voices of other languages, which read English spelled as their language would write its sounds. */
const accentLanguage: Readonly<Record<string, string>> = { suo_fi_lj_diphone: "finnish", pc_diphone: "italian" };

export interface TestVoice {
  readonly engine: Engine;
  readonly name: string;
  /** Two synthesisers may have recorded one person; intervals count people. */
  readonly speaker: string;
}

/** How long each sound lasts, times the voice's own: the three speeds of audio/make/render.py. */
export const stretches = [1.18, 1, 0.85] as const;

export interface TestVoices {
  readonly voices: readonly TestVoice[];
  /** Reported apart from the others. */
  readonly accents: readonly TestVoice[];
  readonly missing: readonly string[];
}

export function testVoices(): TestVoices {
  const { test } = heldOut.parse(JSON.parse(readFileSync(file, "utf8")));
  const speakerOf = (engine: Engine, name: string) => (name.includes("slt") ? "slt" : `${engine} ${name}`);
  const of = (engine: Engine): readonly TestVoice[] =>
    isInstalled(engine) ? test[engine].map((name) => ({ engine, name, speaker: speakerOf(engine, name) })) : [];
  const missing = [...engines, "accents" as const].filter((engine) => !isInstalled(engine));
  return {
    voices: engines.flatMap(of),
    accents: of("accents"),
    missing: missing.map((engine) => `${engine} (${howToGet[engine]})`),
  };
}

const festivalVoices = "/usr/share/festival/voices";
function isInstalled(engine: Engine): boolean {
  if (engine === "gnuspeech") return existsSync(join(gnuspeech, "dist/exports/GnuSpeech.js"));
  if (engine === "festival") return existsSync(`${festivalVoices}/us/cmu_us_slt_arctic_hts`);
  if (engine === "accents")
    return ["finnish/suo_fi_lj_diphone", "italian/pc_diphone"].every((name) => existsSync(`${festivalVoices}/${name}`));
  return existsSync(`/usr/bin/${engine}`);
}

/** What was made by other source is made again. */
const source = ["./voices.ts", "../../../src/recogniser/sound/resample.ts", "../../../audio/make/gnuspeech.mjs"]
  .map((name) => readFileSync(new URL(name, import.meta.url), "utf8"))
  .join();

/** @returns 16 kHz mono, silence at both ends cut, RMS 0.05 over its own length. Rendered once and kept. */
export function said({ engine, name }: TestVoice, words: string, stretch: number): Float32Array {
  const key = createHash("sha256").update(`${engine} ${name} ${stretch} ${words} ${source}`).digest("hex").slice(0, 24);
  return kept(join("said", key), () => {
    const folder = mkdtempSync(join(tmpdir(), "said-"));
    try {
      const path = join(folder, "said.wav");
      render(engine, name, words.replaceAll("colour", "color"), stretch, path);
      const read = readWav(new Uint8Array(readFileSync(path)));
      if (!read.ok) throw new Error(`${engine} ${name}: ${words}: ${read.message}`);
      return levelled(trimmed(resample(read.sound.samples, read.sound.rateHz)));
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
}

function render(engine: Engine, name: string, words: string, stretch: number, path: string): void {
  const run = (program: string, args: readonly string[]) => execFileSync(program, args, { stdio: "ignore" });
  if (engine === "flite")
    run("flite", ["-voice", name, "--setf", `duration_stretch=${stretch}`, "-t", words, "-o", path]);
  else if (engine === "espeak-ng")
    run("espeak-ng", ["-v", `en-us+${name}`, "-s", String(Math.round(170 / stretch)), "-w", path, words]);
  else if (engine === "gnuspeech") {
    const job = `${path}.json`;
    writeFileSync(job, JSON.stringify([{ path, text: words, voice: name, tempo: Math.round(110 / stretch) / 100 }]));
    execFileSync("node", ["audio/make/gnuspeech.mjs", job], { env: { ...process.env, GNUSPEECH: gnuspeech } });
  } else {
    const text = engine === "accents" ? spelled(words, accentLanguage[name] ?? "") : words;
    const script = [
      `(voice_${name})`,
      `(Parameter.set 'Duration_Stretch ${stretch})`,
      `(utt.save.wave (utt.synth (Utterance Text "${text.replace(/[\\"]/g, "")}")) "${path}" 'riff)`,
    ];
    execFileSync("festival", ["--pipe"], {
      input: Buffer.from(script.join("\n"), engine === "accents" ? "latin1" : "utf8"),
      stdio: ["pipe", "ignore", "ignore"],
    });
  }
}

/** As audio/make/accents.py spells it. */
function spelled(words: string, language: string): string {
  const program = "import sys; import accents; print(accents.spelled(sys.argv[1], sys.argv[2]))";
  const env = { ...process.env, PYTHONPATH: "audio/make", PYTHONIOENCODING: "utf-8" };
  return execFileSync("python3", ["-c", program, words, language], { env, encoding: "utf8" }).trim();
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

export const rmsOf = (sound: Float32Array): number =>
  Math.sqrt(sound.reduce((sum, x) => sum + x * x, 0) / Math.max(1, sound.length));
export function levelled(sound: Float32Array, rms = 0.05): Float32Array {
  const gain = rms / Math.max(1e-9, rmsOf(sound));
  return sound.map((x) => x * gain);
}
