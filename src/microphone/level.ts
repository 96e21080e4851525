/** How loud the sound is: shown while it listens, and measured by the sound check. Pure. */

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
