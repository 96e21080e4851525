/**
 * Sound to mel frames: every 80 ms of 16 kHz sound becomes 8 rows of 32 numbers, log10 of the power that each mel
 * filter passes on 16-bit scale, never below 0, plus 2. Windows are 400 samples of Hann, centred in 512, every 160
 * samples. Rows do not depend on their neighbours. (Front end of the speech embedding of Lin et al. 2020,
 * arXiv 2002.01322, with a fixed floor in place of one relative to the loudest row.)
 */
import { fft, fftSize } from "./fft";

export const hopSamples = 160;
export const rowsPerStep = 8;
export const melCount = 32;
/** New samples between two steps: 80 ms. */
export const stepSamples = hopSamples * rowsPerStep;
/** Samples one step looks at: its own 1280 and the 352 that its last window reaches past them. */
export const spanSamples = (rowsPerStep - 1) * hopSamples + fftSize;
const windowSamples = 400;
const fullScale = 32_768;
const leastPower = 1;
const offset = 2;
export const bins = fftSize / 2 + 1;

const edge = (fftSize - windowSamples) / 2;
const scaledHann = Float64Array.from({ length: fftSize }, (_, n) =>
  n < edge || n >= edge + windowSamples
    ? 0
    : fullScale * (0.5 - 0.5 * Math.cos((2 * Math.PI * (n - edge)) / windowSamples)),
);

/** One mel filter: the first bin it hears and its weight for each bin from there on. */
interface Filter {
  readonly firstBin: number;
  readonly weights: Float64Array;
}

function filtersOf(melMatrix: Float32Array): readonly Filter[] {
  return Array.from({ length: melCount }, (_, band) => {
    const column = Float64Array.from({ length: bins }, (_, bin) => melMatrix[bin * melCount + band] ?? 0);
    const firstBin = Math.max(
      0,
      column.findIndex((w) => w !== 0),
    );
    return { firstBin, weights: column.slice(firstBin, column.findLastIndex((w) => w !== 0) + 1) };
  });
}

/** Makes the rows of one step. Holds scratch space only: the same samples always give the same rows. */
export class MelFrames {
  readonly #filters: readonly Filter[];
  readonly #re = new Float64Array(fftSize);
  readonly #im = new Float64Array(fftSize);
  readonly #power = new Float64Array(bins);

  /** @param melMatrix 257 bins × 32 filters, row after row. */
  constructor(melMatrix: Float32Array) {
    this.#filters = filtersOf(melMatrix);
  }

  /**
   * @param samples  16 kHz mono, −1..1; read from `from` for `spanSamples`.
   * @param rows     Written: 8 × 32 values, row after row.
   */
  step(samples: Float32Array, from: number, rows: Float32Array): void {
    for (let row = 0; row < rowsPerStep; row += 2) {
      this.#transformTwo(samples, from + row * hopSamples);
      this.#filterInto(rows, row * melCount, false);
      this.#filterInto(rows, (row + 1) * melCount, true);
    }
  }

  /** Two real windows ride in one complex transform: one as the real part, one as the imaginary. */
  #transformTwo(samples: Float32Array, at: number): void {
    for (let n = 0; n < fftSize; n++) {
      const w = scaledHann[n] as number;
      this.#re[n] = (samples[at + n] as number) * w;
      this.#im[n] = (samples[at + n + hopSamples] as number) * w;
    }
    fft(this.#re, this.#im);
  }

  #filterInto(rows: Float32Array, at: number, isSecond: boolean): void {
    const re = this.#re;
    const im = this.#im;
    for (let k = 0; k < bins; k++) {
      const m = (fftSize - k) % fftSize;
      const a = isSecond ? (im[k] as number) + (im[m] as number) : (re[k] as number) + (re[m] as number);
      const b = isSecond ? (re[m] as number) - (re[k] as number) : (im[k] as number) - (im[m] as number);
      this.#power[k] = (a * a + b * b) / 4;
    }
    for (const [i, { firstBin, weights }] of this.#filters.entries()) {
      let sum = 0;
      for (let b = 0; b < weights.length; b++) sum += (weights[b] as number) * (this.#power[firstBin + b] as number);
      rows[at + i] = Math.log10(Math.max(sum, leastPower)) + offset;
    }
  }
}
