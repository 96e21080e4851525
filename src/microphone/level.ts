/** How loud the sound is, and how far speech stands above the room: shown at the sound check. Pure. */

export interface Level {
  /** Linear, 0..1. */
  readonly rms: number;
  readonly peak: number;
}

/** Gathers samples and gives a level each time a tenth of a second is full. */
export class LevelMeter {
  readonly #window: number;
  #count = 0;
  #squares = 0;
  #peak = 0;

  constructor(rateHz: number) {
    this.#window = Math.round(rateHz / 10);
  }

  take(samples: Float32Array): readonly Level[] {
    const levels: Level[] = [];
    for (const sample of samples) {
      this.#squares += sample * sample;
      this.#peak = Math.max(this.#peak, Math.abs(sample));
      if (++this.#count < this.#window) continue;
      levels.push({ rms: Math.sqrt(this.#squares / this.#count), peak: this.#peak });
      this.#count = 0;
      this.#squares = 0;
      this.#peak = 0;
    }
    return levels;
  }
}

export type SoundCheck =
  | { readonly kind: "too-short" }
  | { readonly kind: "clipped" }
  | { readonly kind: "measured"; readonly roomDb: number; readonly speechDb: number; readonly ratioDb: number };

const decibels = (rms: number) => 20 * Math.log10(Math.max(rms, 1e-6));
const leastSeconds = 3;

/**
 * From the levels (ten a second) of a few seconds in which the artist spoke once or twice: the room is the quiet tenth,
 * speech the loud tenth. Decibels below full scale; `ratioDb` is speech above room. Our own rule of thumb, no source.
 */
export function soundCheck(levels: readonly Level[]): SoundCheck {
  if (levels.length < leastSeconds * 10) return { kind: "too-short" };
  if (levels.some((level) => level.peak >= 0.999)) return { kind: "clipped" };
  const sorted = levels.map((level) => level.rms).sort((a, b) => a - b);
  const at = (part: number) => decibels(sorted[Math.floor(part * (sorted.length - 1))] ?? 0);
  const [roomDb, speechDb] = [at(0.1), at(0.9)];
  return { kind: "measured", roomDb, speechDb, ratioDb: speechDb - roomDb };
}
