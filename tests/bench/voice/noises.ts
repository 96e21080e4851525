/**
 * Noise for the benchmark: a machine (subtractive synthesis, as in rehearsals; training adds sine waves), people talking
 * across one another whom training never heard, music that it never heard, and a small room. Deterministic.
 */
import { buzz } from "../../../audio/make/rehearsal/buzz";
import { sampleRateHz } from "../../../src/recogniser";
import { seededRandom } from "../../../src/rehearsal/random";
import { rmsOf } from "./voices";

export type Noise = (count: number, seed: number) => Float32Array;

/** Another machine for each seed: 60-140 blows a second, ringing elsewhere, running all the time. */
export const machine: Noise = (count, seed) => {
  const random = seededRandom(seed);
  const ring = (low: number, high: number) => {
    const hertz = low * (high / low) ** random();
    return [hertz, hertz * (0.15 + 0.3 * random())] as const;
  };
  const bodyHz = [ring(150, 500), ring(600, 1_800), ring(1_800, 5_000)];
  const shape = { hertz: 60 + 80 * random(), passSec: [600, 900], restSec: [1, 2], bodyHz } as const;
  return buzz(sampleRateHz, seed, shape).take(count);
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

/** Somewhere in one of `pieces`, and on with those that follow. */
export const musicOf =
  (pieces: readonly Float32Array[]): Noise =>
  (count, seed) => {
    const random = seededRandom(seed);
    const total = new Float32Array(count);
    let piece = Math.floor(random() * pieces.length);
    for (let at = -Math.floor(random() * sampleRateHz); at < count; piece++) {
      const part = pieces[piece % pieces.length] ?? new Float32Array(count);
      for (let n = Math.max(0, -at); n < part.length && at + n < count; n++) total[at + n] = part[n] ?? 0;
      at += part.length;
    }
    return total;
  };

/** A small room: the direct sound and a tail that decays by 60 dB in 0.12 to 0.6 s (as in audio/make/sound.py). */
export function inRoom(sound: Float32Array, random: () => number): Float32Array {
  const decaySamples = Math.round((0.12 + 0.48 * random()) * sampleRateHz);
  const [level, firstTap] = [0.02 + 0.1 * random(), 10 + Math.floor(110 * random())];
  // A few hundred echoes at random places carry the energy of a dense tail.
  const density = 24;
  const taps = Array.from({ length: Math.floor(decaySamples / density) }, () => {
    const at = firstTap + Math.floor(random() * (decaySamples - firstTap));
    return { at, gain: (random() < 0.5 ? -1 : 1) * level * Math.sqrt(density) * 10 ** ((-3 * at) / decaySamples) };
  });
  const heard = new Float32Array(sound.length + decaySamples);
  heard.set(sound);
  for (const { at, gain } of taps) {
    if (Math.abs(gain) < 0.002) continue;
    for (let n = 0; n < sound.length; n++) heard[n + at] = (heard[n + at] as number) + gain * (sound[n] as number);
  }
  return heard;
}
