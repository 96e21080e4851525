/** Trims the silence around a clip and brings every clip to one loudness, so that no sentence jumps out or drowns. */
import type { Sound } from "./wav";

const frameSec = 0.01;
/** Below the loudest frame by this much counts as silence. */
const silenceDb = 42;
const keepBeforeSec = 0.015;
const keepAfterSec = 0.03;
const fadeSec = 0.005;
/** Loudness of the frames with speech in them, in decibels below full scale. Our choice: loud, for a loud room. */
const targetDb = -17;
const ceiling = 0.95;

const toDb = (power: number): number => 10 * Math.log10(power + 1e-12);

function framePowers(samples: Float32Array, frame: number): readonly number[] {
  return Array.from({ length: Math.ceil(samples.length / frame) }, (_, i) => {
    const part = samples.subarray(i * frame, (i + 1) * frame);
    return part.reduce((sum, x) => sum + x * x, 0) / part.length;
  });
}

export function trimmed({ rateHz, samples }: Sound): Sound {
  const frame = Math.round(frameSec * rateHz);
  const powers = framePowers(samples, frame).map(toDb);
  const floor = Math.max(...powers) - silenceDb;
  const first = powers.findIndex((db) => db > floor);
  const last = powers.findLastIndex((db) => db > floor);
  const from = Math.max(0, first * frame - Math.round(keepBeforeSec * rateHz));
  const to = Math.min(samples.length, (last + 1) * frame + Math.round(keepAfterSec * rateHz));
  const fade = Math.round(fadeSec * rateHz);
  const cut = samples.slice(from, to);
  return { rateHz, samples: cut.map((x, i) => x * Math.min(1, i / fade, (cut.length - 1 - i) / fade)) };
}

/** Peaks that would clip are bent, not cut. */
export function levelled({ rateHz, samples }: Sound): Sound {
  const powers = framePowers(samples, Math.round(frameSec * rateHz));
  const floor = Math.max(...powers) / 100;
  const active = powers.filter((power) => power > floor);
  const speechDb = toDb(active.reduce((sum, power) => sum + power, 0) / active.length);
  const gain = 10 ** ((targetDb - speechDb) / 20);
  return { rateHz, samples: samples.map((x) => ceiling * Math.tanh((gain * x) / ceiling)) };
}

/** In decibels below full scale, over the whole clip. */
export const loudnessDb = ({ samples }: Sound): number =>
  toDb(samples.reduce((sum, x) => sum + x * x, 0) / Math.max(1, samples.length));
