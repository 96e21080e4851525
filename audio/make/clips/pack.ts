/** Packs clips one behind another into a sprite file, with silence between, and says where each lies. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import type { Clip } from "../../../src/announcements/clips";
import { type Sound, writeWav } from "./wav";

/** Wider than the spread of decoders: they differ in the delay that MP3 adds, about 50 ms at 16 kHz. */
const betweenSec = 0.15;
const bitRate = "24k";

export interface Take {
  readonly key: string;
  readonly sound: Sound;
}

/** MP3, since every browser reads it. Deterministic for one version of the encoder. */
export function pack(takes: readonly Take[], path: string, rateHz: number): Readonly<Record<string, Clip>> {
  const between = Math.round(betweenSec * rateHz);
  const length = takes.reduce((sum, { sound }) => sum + sound.samples.length + between, between);
  const samples = new Float32Array(length);
  const clips: Record<string, Clip> = {};
  let at = between;
  for (const { key, sound } of takes) {
    samples.set(sound.samples, at);
    const startMs = Math.floor((at / rateHz) * 1_000);
    const endMs = Math.ceil(((at + sound.samples.length) / rateHz) * 1_000);
    clips[key] = { file: basename(path), startMs, durationMs: endMs - startMs };
    at += sound.samples.length + between;
  }
  const folder = mkdtempSync(join(tmpdir(), "pack-"));
  const wav = join(folder, "sprite.wav");
  writeWav(wav, { rateHz, samples });
  const encode = ["-c:a", "libmp3lame", "-b:a", bitRate, "-ac", "1", "-ar", String(rateHz)];
  execFileSync("ffmpeg", ["-v", "error", "-y", "-i", wav, "-map_metadata", "-1", "-bitexact", ...encode, path]);
  rmSync(folder, { recursive: true });
  return clips;
}
