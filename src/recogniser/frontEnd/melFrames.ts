/**
 * Sound to mel frames: every 80 ms of 16 kHz sound becomes 8 rows of 32 numbers. Windows are 400 samples of Hann,
 * centred in 512, every 160 samples. Numbers are decibels over 16-bit scale, held within 80 dB of the loudest of
 * their 8 rows, then x/10 + 2: the form the speech embedding was trained on (Lin et al. 2020, arXiv 2002.01322).
 */
import { fft, fftSize } from "./fft";
import { melCount, melFilters } from "./melBank";

export const hopSamples = 160;
export const rowsPerStep = 8;
/** New samples between two steps: 80 ms. */
export const stepSamples = hopSamples * rowsPerStep;
/** Samples one step looks at: its own 1280 and the 352 that its last window reaches past them. */
export const spanSamples = (rowsPerStep - 1) * hopSamples + fftSize;
const windowSamples = 400;
const fullScale = 32_768;
const rangeDb = 80;
const leastPower = 1e-10;
const bins = fftSize / 2 + 1;

const edge = (fftSize - windowSamples) / 2;
const hann = Float64Array.from({ length: fftSize }, (_, n) =>
  n < edge || n >= edge + windowSamples ? 0 : 0.5 - 0.5 * Math.cos((2 * Math.PI * (n - edge)) / windowSamples),
);

/** Makes the rows of one step. Holds scratch space only: the same samples always give the same rows. */
export class MelFrames {
  readonly #filters = melFilters();
  readonly #re = new Float64Array(fftSize);
  readonly #im = new Float64Array(fftSize);
  readonly #power = new Float64Array(bins);

  /**
   * @param samples  16 kHz mono, −1..1; read from `from` for `spanSamples`.
   * @param rows     Written: 8 × 32 values, row after row.
   */
  step(samples: Float32Array, from: number, rows: Float64Array): void {
    for (let row = 0; row < rowsPerStep; row += 2) this.#twoRows(samples, from + row * hopSamples, rows, row);
    let loudest = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < rows.length; i++) loudest = Math.max(loudest, rows[i] as number);
    const floor = loudest - rangeDb;
    for (let i = 0; i < rows.length; i++) rows[i] = Math.max(rows[i] as number, floor) / 10 + 2;
  }

  /** Two real windows ride in one complex transform: one as the real part, one as the imaginary. */
  #twoRows(samples: Float32Array, at: number, rows: Float64Array, row: number): void {
    const re = this.#re;
    const im = this.#im;
    for (let n = 0; n < fftSize; n++) {
      const w = (hann[n] as number) * fullScale;
      re[n] = (samples[at + n] as number) * w;
      im[n] = (samples[at + n + hopSamples] as number) * w;
    }
    fft(re, im);
    for (const second of [false, true]) {
      for (let k = 0; k < bins; k++) {
        const m = (fftSize - k) % fftSize;
        const a = second ? (im[k] as number) + (im[m] as number) : (re[k] as number) + (re[m] as number);
        const b = second ? (re[m] as number) - (re[k] as number) : (im[k] as number) - (im[m] as number);
        this.#power[k] = (a * a + b * b) / 4;
      }
      this.#filterInto(rows, (second ? row + 1 : row) * melCount);
    }
  }

  #filterInto(rows: Float64Array, at: number): void {
    for (let i = 0; i < melCount; i++) {
      const filter = this.#filters[i];
      if (filter === undefined) continue;
      let sum = 0;
      for (let b = 0; b < filter.weights.length; b++) {
        sum += (filter.weights[b] as number) * (this.#power[filter.firstBin + b] as number);
      }
      rows[at + i] = 10 * Math.log10(Math.max(sum, leastPower));
    }
  }
}
