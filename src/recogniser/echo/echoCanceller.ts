/**
 * Takes the companion's own voice out of the microphone, so that it neither hears itself nor is deaf while it speaks. What
 * was played is known; how the room returns it is learnt: one long filter in the frequency domain, in partitions, each bin
 * with its own uncertainty, so that an artist who speaks meanwhile does not spoil what was learnt.
 *
 * @see Kuech, Mabande, Enzner: State-space architecture of the partitioned-block-based acoustic echo controller, ICASSP 2014
 */
import { fft, fftSize } from "../frontEnd/fft";

const block = fftSize / 2;
const bins = block + 1;
/** 32 blocks of 16 ms: half a second for the way out, through the room and back in. */
const partitions = 32;
/** How much the room may change from block to block. */
const keeps = 0.9995;
const firstUncertainty = 1;
/** How fast the estimate of everything that is not echo follows. */
const follows = 0.8;
/** Of so many partitions at each block the part that wraps around is cut off; in their turn. */
const trimmedEach = 4;

export class EchoCanceller {
  readonly #playedRe: Float64Array[] = [];
  readonly #playedIm: Float64Array[] = [];
  readonly #filterRe = spectra();
  readonly #filterIm = spectra();
  readonly #uncertain = spectra(firstUncertainty);
  readonly #others = new Float64Array(bins);
  readonly #before = new Float64Array(block);
  readonly #re = new Float64Array(fftSize);
  readonly #im = new Float64Array(fftSize);
  /** Blocks since anything was played. */
  #quietFor = partitions + 1;
  #trim = 0;

  constructor() {
    for (let p = 0; p < partitions; p++) {
      this.#playedRe.push(new Float64Array(bins));
      this.#playedIm.push(new Float64Array(bins));
    }
  }

  /** Samples that are taken at once, at 16 kHz. */
  static readonly blockSamples = block;

  /**
   * One block, in place.
   * @param heard   What the microphone gave.
   * @param played  What was sent to the loudspeaker meanwhile; null for silence. It may come up to half a second before its echo.
   */
  take(heard: Float32Array, played: Float32Array | null): void {
    const isQuiet = played === null || played.every((x) => x === 0);
    this.#quietFor = isQuiet ? this.#quietFor + 1 : 0;
    if (this.#quietFor > partitions) return;
    this.#shiftIn(played);
    const re = this.#re;
    const im = this.#im;
    this.#echoSpectrum();
    fft(im, re);
    for (let n = 0; n < block; n++) heard[n] = (heard[n] as number) - (re[block + n] as number) / fftSize;
    re.fill(0, 0, block);
    for (let n = 0; n < block; n++) re[block + n] = heard[n] as number;
    im.fill(0);
    fft(re, im);
    this.#learn(re, im);
  }

  /** The newest spectrum of what was played moves in, the oldest out. */
  #shiftIn(played: Float32Array | null): void {
    const re = this.#re;
    const im = this.#im;
    re.set(this.#before);
    im.fill(0);
    for (let n = 0; n < block; n++) {
      const x = played?.[n] ?? 0;
      re[block + n] = x;
      this.#before[n] = x;
    }
    fft(re, im);
    const newestRe = this.#playedRe.pop() as Float64Array;
    const newestIm = this.#playedIm.pop() as Float64Array;
    newestRe.set(re.subarray(0, bins));
    newestIm.set(im.subarray(0, bins));
    this.#playedRe.unshift(newestRe);
    this.#playedIm.unshift(newestIm);
  }

  /** What the filter expects of the microphone, as a whole spectrum of a real signal, for the way back. */
  #echoSpectrum(): void {
    const re = this.#re.fill(0);
    const im = this.#im.fill(0);
    for (let p = 0; p < partitions; p++) {
      const [xr, xi] = [this.#playedRe[p] as Float64Array, this.#playedIm[p] as Float64Array];
      const [wr, wi] = [this.#filterRe[p] as Float64Array, this.#filterIm[p] as Float64Array];
      for (let k = 0; k < bins; k++) {
        const [a, b, c, d] = [xr[k] as number, xi[k] as number, wr[k] as number, wi[k] as number];
        re[k] = (re[k] as number) + a * c - b * d;
        im[k] = (im[k] as number) + a * d + b * c;
      }
    }
    mirror(re, im);
  }

  /** One step of the Kalman filter with what is left over. */
  #learn(errorRe: Float64Array, errorIm: Float64Array): void {
    const need = new Float64Array(bins);
    for (let k = 0; k < bins; k++) {
      const power = (errorRe[k] as number) ** 2 + (errorIm[k] as number) ** 2;
      this.#others[k] = follows * (this.#others[k] as number) + (1 - follows) * power;
      need[k] = 2 * (this.#others[k] as number) + 1e-9;
    }
    for (let p = 0; p < partitions; p++) {
      const [xr, xi] = [this.#playedRe[p] as Float64Array, this.#playedIm[p] as Float64Array];
      const unsure = this.#uncertain[p] as Float64Array;
      for (let k = 0; k < bins; k++) {
        need[k] = (need[k] as number) + ((xr[k] as number) ** 2 + (xi[k] as number) ** 2) * (unsure[k] as number);
      }
    }
    const drift = 1 - keeps * keeps;
    for (let p = 0; p < partitions; p++) {
      const [xr, xi] = [this.#playedRe[p] as Float64Array, this.#playedIm[p] as Float64Array];
      const [wr, wi] = [this.#filterRe[p] as Float64Array, this.#filterIm[p] as Float64Array];
      const unsure = this.#uncertain[p] as Float64Array;
      for (let k = 0; k < bins; k++) {
        const [a, b] = [xr[k] as number, xi[k] as number];
        const gain = (unsure[k] as number) / (need[k] as number);
        const [er, ei] = [errorRe[k] as number, errorIm[k] as number];
        const learnt = 1 - 0.5 * gain * (a * a + b * b);
        const size = (wr[k] as number) ** 2 + (wi[k] as number) ** 2;
        unsure[k] = keeps * keeps * learnt * (unsure[k] as number) + drift * size;
        wr[k] = (wr[k] as number) + gain * (a * er + b * ei);
        wi[k] = (wi[k] as number) + gain * (a * ei - b * er);
      }
    }
    for (let n = 0; n < trimmedEach; n++) {
      this.#trimOne(this.#trim);
      this.#trim = (this.#trim + 1) % partitions;
    }
  }

  /** A partition answers for one block only: what lies behind it in time belongs to the next. */
  #trimOne(p: number): void {
    const re = this.#re.fill(0);
    const im = this.#im.fill(0);
    re.set(this.#filterRe[p] as Float64Array);
    im.set(this.#filterIm[p] as Float64Array);
    mirror(re, im);
    fft(im, re);
    for (let n = 0; n < block; n++) re[n] = (re[n] as number) / fftSize;
    re.fill(0, block);
    im.fill(0);
    fft(re, im);
    (this.#filterRe[p] as Float64Array).set(re.subarray(0, bins));
    (this.#filterIm[p] as Float64Array).set(im.subarray(0, bins));
  }
}

function spectra(value = 0): readonly Float64Array[] {
  return Array.from({ length: partitions }, () => new Float64Array(bins).fill(value));
}

/** Completes the spectrum of a real signal from its first half. */
function mirror(re: Float64Array, im: Float64Array): void {
  for (let k = 1; k < block; k++) {
    re[fftSize - k] = re[k] as number;
    im[fftSize - k] = -(im[k] as number);
  }
}
