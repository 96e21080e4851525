/**
 * The recorded artist's voice: a synthetic one that the phrase model was never trained on (audio/make/held-out.json), the
 * best understood at 15 dB of those tried. Needs Debian's espeak-ng. Phrases are kept in out/rehearsal/phrases.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, renameSync } from "node:fs";
import { join } from "node:path";
import type { AddressWord, CommandId } from "../../../src/intent/phrases";
import { spoken } from "../../../src/intent/spoken";
import type { PhraseLanguage } from "../../../src/intent/wording";
import { resample } from "../../../src/recogniser";
import { trimmed } from "../clips/loudness";
import { readWav } from "../clips/wav";

export const artistVoice = "en-us+m6";
const voices: Readonly<Record<PhraseLanguage, string>> = { en: artistVoice, es: "es+m6" };
const wordsPerMinute = "160";
export const rateHz = 16_000;
/** Root mean square of each phrase, over its own length: about -26 dB of full scale, as a lapel microphone gives. */
export const phraseRms = 0.05;

export const howToInstall = "The recorded artist needs espeak-ng: apt-get install espeak-ng";

export function hasVoice(): boolean {
  try {
    execFileSync("espeak-ng", ["--version"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}

/** @returns the phrase at 16 kHz, trimmed and levelled. */
export function phrase(
  address: AddressWord,
  command: CommandId,
  folder: string,
  language: PhraseLanguage = "en",
): Float32Array {
  const words = spoken(address, command, language);
  const path = join(folder, `${voices[language]}-${words.replace(/[^a-z]+/gi, "-")}.wav`);
  if (!existsSync(path)) {
    mkdirSync(folder, { recursive: true });
    execFileSync("espeak-ng", ["-v", voices[language], "-s", wordsPerMinute, "-w", `${path}.part`, words]);
    renameSync(`${path}.part`, path);
  }
  const { samples, rateHz: given } = trimmed(readWav(path));
  const sound = resample(samples, given);
  const rms = Math.sqrt(sound.reduce((sum, x) => sum + x * x, 0) / sound.length);
  return sound.map((x) => (x * phraseRms) / rms);
}
