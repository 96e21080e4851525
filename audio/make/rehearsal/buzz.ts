/**
 * A tattoo machine for rehearsals: a pulse train with a little drift, through three resonances, with the hiss of its
 * motor, in passes with short rests. Made up, since no free recording is to be had; and made another way than the noise
 * that the phrase model was trained on, which adds sine waves.
 */
import { seededRandom } from "../../../src/rehearsal/random";

export interface Buzz {
  /** The next so many samples. */
  take(count: number): Float32Array;
}

/** Root mean square while it runs: measured on a second of it, then set. */
export const buzzRms = 0.1;

/** Two-pole resonance: centre in Hz, bandwidth in Hz. */
function resonance(hertz: number, widthHz: number, rateHz: number): (x: number) => number {
  const r = Math.exp((-Math.PI * widthHz) / rateHz);
  const [a1, a2] = [2 * r * Math.cos((2 * Math.PI * hertz) / rateHz), -r * r];
  const gain = 1 - r;
  let [y1, y2] = [0, 0];
  return (x) => {
    const y = gain * x + a1 * y1 + a2 * y2;
    y2 = y1;
    y1 = y;
    return y;
  };
}

export interface BuzzShape {
  readonly hertz: number;
  /** Seconds that a pass and a rest last, from and to. */
  readonly passSec: readonly [number, number];
  readonly restSec: readonly [number, number];
  /** Where its body and the tray ring, centre and bandwidth in Hz; a pen machine's by default. */
  readonly bodyHz?: readonly (readonly [number, number])[];
}

const penBodyHz = [
  [240, 90],
  [1_150, 260],
  [2_700, 500],
] as const;

export const penMachine: BuzzShape = { hertz: 104, passSec: [20, 45], restSec: [2, 5] };

export function buzz(rateHz: number, seed: number, shape: BuzzShape = penMachine): Buzz {
  const random = seededRandom(seed);
  const between = ([from, to]: readonly [number, number]) => from + (to - from) * random();
  const body = (shape.bodyHz ?? penBodyHz).map(([hertz, widthHz]) => resonance(hertz, widthHz, rateHz));
  const hiss = resonance(3_300, 1_400, rateHz);
  let phase = 0;
  let drift = 1;
  let isOn = true;
  let left = Math.round(between(shape.passSec) * rateHz);
  let level = 0;

  const sample = (): number => {
    if (--left <= 0) {
      isOn = !isOn;
      left = Math.round(between(isOn ? shape.passSec : shape.restSec) * rateHz);
    }
    // It runs up and down within about 60 ms.
    level += ((isOn ? 1 : 0) - level) / (0.02 * rateHz);
    drift += (1 - drift) * 1e-5 + (random() - 0.5) * 2e-5;
    phase = (phase + (shape.hertz * drift) / rateHz) % 1;
    const blow = phase < 0.18 ? 1 - phase / 0.18 : 0;
    const rattle = blow - 0.09 + 0.12 * (random() - 0.5);
    const sounding = body.reduce((sum, each) => sum + each(rattle), 0) + 0.25 * hiss(random() - 0.5);
    return level * sounding;
  };

  const kept = { left, isOn };
  [left, level] = [3 * rateHz, 1];
  for (let n = 0; n < rateHz; n++) sample();
  let squares = 0;
  for (let n = 0; n < rateHz; n++) squares += sample() ** 2;
  const gain = buzzRms / Math.sqrt(squares / rateHz);
  ({ left, isOn } = kept);
  level = 0;

  return { take: (count) => Float32Array.from({ length: count }, () => gain * sample()) };
}
