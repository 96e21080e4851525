/** Phrases of voices that no training has seen (audio/make/held-out.json), rendered by Debian's synthesisers and kept in out. */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, renameSync } from "node:fs";
import { join } from "node:path";
import { type CommandId, commands } from "../../../src/intent/phrases";
import { readWav, resample } from "../../../src/recogniser";

export interface Voice {
  readonly name: string;
  /** @returns program and arguments that write `words` to `path`, spoken `speed` times as fast as usual. */
  command(words: string, path: string, speed: number): readonly string[];
}

const espeak = (variant: string, accent = "en-us"): Voice => ({
  name: `espeak-ng ${variant}`,
  command: (words, path, speed) => [
    "espeak-ng",
    "-v",
    `${accent}+${variant}`,
    "-s",
    String(Math.round(165 * speed)),
    "-w",
    path,
    words,
  ],
});
const flite = (voice: string): Voice => ({
  name: `flite ${voice}`,
  command: (words, path, speed) => [
    "flite",
    "-voice",
    voice,
    "--setf",
    `duration_stretch=${(1 / speed).toFixed(3)}`,
    "-t",
    words.replace("colour", "color"),
    "-o",
    path,
  ],
});

/** Two engines, two synthesis methods of the second; none in training nor in the choice of thresholds. */
export const heldOutVoices: readonly Voice[] = [
  flite("rms"),
  flite("slt"),
  espeak("m6"),
  espeak("klatt4"),
  espeak("belinda", "en-gb"),
  espeak("klatt2", "en-gb"),
  espeak("grandma"),
  espeak("RicishayMax2"),
];

const folder = join("out", "bench", "phrases");
const silenceBelow = 0.01;

/** The words as this voice says them: 16 kHz, trimmed, at an RMS of 0.05 over its own length. */
export function said(voice: Voice, words: string, speed: number): Float32Array {
  const told = `${voice.name} ${words} ${speed}`;
  // espeak-ng cuts paths that are longer than it expects.
  const digest = createHash("sha256").update(told).digest("hex").slice(0, 16);
  const path = join(folder, `${told.replace(/[^a-z0-9.]+/gi, "-").slice(0, 60)}-${digest}.wav`);
  if (!existsSync(path)) {
    mkdirSync(folder, { recursive: true });
    const [program, ...args] = voice.command(words, `${path}.part`, speed);
    execFileSync(program as string, args, { stdio: "ignore" });
    renameSync(`${path}.part`, path);
  }
  const read = readWav(readFileSync(path));
  if (!read.ok) throw new Error(`${path}: ${read.message}`);
  const sound = resample(read.sound.samples, read.sound.rateHz);
  const first = sound.findIndex((x) => Math.abs(x) > silenceBelow);
  const last = sound.findLastIndex((x) => Math.abs(x) > silenceBelow);
  return levelled(sound.slice(Math.max(0, first), last + 1), 0.05);
}

export const phraseOf = (voice: Voice, address: string, command: CommandId, speed = 1): Float32Array =>
  said(voice, `${address} ${commands[command]}`, speed);

export const rmsOf = (sound: Float32Array): number =>
  Math.sqrt(sound.reduce((sum, x) => sum + x * x, 0) / Math.max(1, sound.length));
export function levelled(sound: Float32Array, rms: number): Float32Array {
  const gain = rms / Math.max(1e-9, rmsOf(sound));
  return sound.map((x) => x * gain);
}
