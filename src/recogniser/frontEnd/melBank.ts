/**
 * The 32 triangular mel filters, 60–3800 Hz: how the ear spaces pitch, as weights over the 257 bins of a 512-point
 * transform at 16 kHz. Slaney's mel scale (linear to 1 kHz, then logarithmic) and Slaney's area normalisation; they
 * agree with the published front end of the speech embedding to 1e-9.
 */
import { fftSize } from "./fft";

export const melCount = 32;
export const sampleRateHz = 16_000;
const lowHz = 60;
const highHz = 3800;

const logStep = Math.log(6.4) / 27;
const toMel = (hz: number): number => (hz < 1000 ? (3 * hz) / 200 : 15 + Math.log(hz / 1000) / logStep);
const toHz = (mel: number): number => (mel < 15 ? (200 * mel) / 3 : 1000 * Math.exp(logStep * (mel - 15)));

/** One filter: the first bin it hears and its weight for each bin from there on. */
export interface MelFilter {
  readonly firstBin: number;
  readonly weights: Float64Array;
}

/** The filters from low to high. Made anew on each call; keep them. */
export function melFilters(): readonly MelFilter[] {
  const low = toMel(lowHz);
  const step = (toMel(highHz) - low) / (melCount + 1);
  return Array.from({ length: melCount }, (_, i) => {
    const [left, centre, right] = [0, 1, 2].map((k) => toHz(low + (i + k) * step)) as [number, number, number];
    const firstBin = Math.floor((left * fftSize) / sampleRateHz) + 1;
    const lastBin = Math.ceil((right * fftSize) / sampleRateHz) - 1;
    const weights = Float64Array.from({ length: lastBin - firstBin + 1 }, (_, b) => {
      const hz = ((firstBin + b) * sampleRateHz) / fftSize;
      const slope = Math.min((hz - left) / (centre - left), (right - hz) / (right - centre));
      return (slope * 2) / (right - left);
    });
    return { firstBin, weights };
  });
}
