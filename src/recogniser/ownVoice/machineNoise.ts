/** A machine to say phrases over while they are learnt: sine waves on a hum, and hiss. Made up; every seed another machine. */
import { seededRandom } from "../../rehearsal/random";
import { sampleRateHz } from "../sampleRate";

/** @returns `sound` with the machine so many decibels below it, both by their root mean square. */
export function overMachine(sound: Float32Array, ratioDb: number, seed: number): Float32Array {
  const noise = machine(sound.length, seed);
  const gain = (rms(sound) / rms(noise)) * 10 ** (-ratioDb / 20);
  return sound.map((x, n) => x + gain * (noise[n] as number));
}

function machine(length: number, seed: number): Float32Array {
  const random = seededRandom(seed);
  const hertz = 60 + 85 * random();
  const slope = 0.3 + 1.2 * random();
  const bump = 300 + 2500 * random();
  const partials = Array.from({ length: Math.floor(3800 / hertz) }, (_, n) => {
    const at = hertz * (n + 1);
    const size = (n + 1) ** -slope * (0.3 + random()) + 0.8 * Math.exp(-(((at - bump) / 400) ** 2)) * random();
    return { step: (2 * Math.PI * at) / sampleRateHz, phase: 2 * Math.PI * random(), size };
  });
  const hiss = 0.1 + 0.6 * random();
  return Float32Array.from({ length }, (_, t) => {
    let sum = hiss * (random() - 0.5);
    for (const { step, phase, size } of partials) sum += size * Math.sin(step * t + phase);
    return sum;
  });
}

const rms = (sound: Float32Array): number =>
  Math.sqrt(sound.reduce((sum, x) => sum + x * x, 0) / Math.max(1, sound.length)) + 1e-9;
