/**
 * Noise for the benchmark: a machine (subtractive synthesis, as in rehearsals; training adds sine waves), people talking
 * across one another in voices never trained on, and music where Debian's hold music is installed. Deterministic.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { buzz } from "../../../audio/make/rehearsal/buzz";
import { readWav, resample, sampleRateHz } from "../../../src/recogniser";
import { seededRandom } from "../../../src/rehearsal/random";

export type Noise = (count: number, seed: number) => Float32Array;

export const rmsOf = (sound: Float32Array): number =>
  Math.sqrt(sound.reduce((sum, x) => sum + x * x, 0) / Math.max(1, sound.length));

/** Another machine for each seed: 60-140 blows a second, running all the time. */
export const machine: Noise = (count, seed) => {
  const random = seededRandom(seed);
  return buzz(sampleRateHz, seed, { hertz: 60 + 80 * random(), passSec: [600, 900], restSec: [1, 2] }).take(count);
};

/** Four of `clips` at a time, each followed by another. */
export const babbleOf =
  (clips: readonly Float32Array[]): Noise =>
  (count, seed) => {
    const random = seededRandom(seed);
    const total = new Float32Array(count);
    for (let voice = 0; voice < 4; voice++) {
      const gain = 10 ** ((-6 * random()) / 20);
      for (let at = -Math.floor(random() * sampleRateHz); at < count; ) {
        const clip = clips[Math.floor(random() * clips.length)] ?? new Float32Array(1);
        const level = gain / (rmsOf(clip) + 1e-6);
        for (let n = Math.max(0, -at); n < clip.length && at + n < count; n++) {
          total[at + n] = (total[at + n] ?? 0) + level * (clip[n] ?? 0);
        }
        at += clip.length + Math.floor(random() * 0.3 * sampleRateHz);
      }
    }
    return total;
  };

const songs = "/usr/share/asterisk/moh";
/** The two pieces that training never heard; null where they are not installed. */
export function testMusic(): Noise | null {
  const names = existsSync(songs) ? readdirSync(songs).filter((name) => /^(manolo|reno).*\.wav$/.test(name)) : [];
  const tracks = names.sort().flatMap((name) => {
    const read = readWav(new Uint8Array(readFileSync(`${songs}/${name}`)));
    return read.ok ? [resample(read.sound.samples, read.sound.rateHz)] : [];
  });
  if (tracks.length === 0) return null;
  return (count, seed) => {
    const random = seededRandom(seed);
    const track = tracks[Math.floor(random() * tracks.length)] ?? new Float32Array(count);
    const from = Math.floor(random() * Math.max(1, track.length - count));
    return track.slice(from, from + count);
  };
}

/** Speech at -26 dB with `noise` so many dB below it, over the speech's own length; a little hiss of the microphone. */
export function mixed(speech: Float32Array, noise: Float32Array | null, snrDb: number, seed: number): Float32Array {
  const random = seededRandom(seed);
  const [gain, noiseGain] = [0.05 / rmsOf(speech), noise ? (0.05 * 10 ** (-snrDb / 20)) / (rmsOf(noise) + 1e-9) : 0];
  const beforeSamples = sampleRateHz / 2;
  const length = Math.max(noise?.length ?? 0, speech.length + 2 * beforeSamples);
  return Float32Array.from({ length }, (_, n) => {
    const voice = gain * (speech[n - beforeSamples] ?? 0);
    return voice + noiseGain * (noise?.[n] ?? 0) + (random() - 0.5) * 4e-4;
  });
}
