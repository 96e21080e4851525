/**
 * Any sampling rate from 8 to 96 kHz to 16 kHz, as a stream. Each output is a sum of the inputs around its instant,
 * weighted by a Kaiser-windowed sinc (J. O. Smith, "Digital Audio Resampling", CCRMA). Time is counted in whole
 * numbers, so nothing drifts over hours, and the outputs do not depend on how the input was cut into chunks.
 */
import { sampleRateHz } from "../sampleRate";

export const lowestRateHz = 8_000;
export const highestRateHz = 96_000;
/** Zero crossings on each side; with this window, 80 dB down outside and a transition about a tenth of the band. */
const crossings = 24;
const phases = 512;
const kaiserBeta = 8;
/** Usual rates need at most 320 different sets of weights; odd ones compute the rest as they go. */
const mostKnown = 320;
/** Where the pass band ends, as a part of the narrower of the two half rates. */
const passBand = 0.92;

function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > 1e-12 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/** One side of the kernel, `phases` points between zero crossings. */
const kernel = Float64Array.from({ length: crossings * phases + 2 }, (_, i) => {
  const t = i / phases;
  if (t >= crossings) return 0;
  const sinc = t === 0 ? 1 : Math.sin(Math.PI * t) / (Math.PI * t);
  return (sinc * besselI0(kaiserBeta * Math.sqrt(1 - (t / crossings) ** 2))) / besselI0(kaiserBeta);
});

export class Resampler {
  readonly #rateHz: number;
  /** Kernel steps for each input sample, and the gain that keeps a constant constant. */
  readonly #scale: number;
  readonly #reach: number;
  readonly #known = new Map<number, Float64Array>();
  #held: Float32Array;
  /** Input index of held[0]; input index and 1/16000ths of the next output's instant. */
  #heldFrom: number;
  #heldCount: number;
  #whole = 0;
  #part = 0;

  /** @param rateHz Whole, 8000–96000; anything else is a caller's mistake and throws RangeError. */
  constructor(rateHz: number) {
    if (!Number.isInteger(rateHz) || rateHz < lowestRateHz || rateHz > highestRateHz) {
      throw new RangeError(`sampling rate must be a whole number from 8000 to 96000 Hz, not ${rateHz}`);
    }
    this.#rateHz = rateHz;
    this.#scale = passBand * Math.min(1, sampleRateHz / rateHz);
    this.#reach = Math.ceil(crossings / this.#scale) + 1;
    this.#held = new Float32Array(4 * this.#reach + 4096);
    this.#heldFrom = -this.#reach;
    this.#heldCount = this.#reach;
  }

  /** Takes the next samples, −1..1; gives the 16 kHz samples they complete. Output n is the sound at n/16000 s. */
  push(samples: Float32Array): Float32Array {
    if (this.#rateHz === sampleRateHz) return samples;
    this.#hold(samples);
    const end = this.#heldFrom + this.#heldCount;
    const room = Math.max(0, Math.ceil(((end - this.#whole) * sampleRateHz) / this.#rateHz) + 1);
    const out = new Float32Array(room);
    let n = 0;
    while (this.#whole + this.#reach < end) {
      out[n++] = this.#at(this.#whole, this.#part);
      this.#part += this.#rateHz;
      this.#whole += Math.floor(this.#part / sampleRateHz);
      this.#part %= sampleRateHz;
    }
    return out.subarray(0, n);
  }

  /** The sound has ended: gives what was waiting for its right-hand neighbours. */
  finish(): Float32Array {
    return this.push(new Float32Array(this.#reach + 1));
  }

  #hold(samples: Float32Array): void {
    const spare = Math.min(this.#heldCount, Math.max(0, this.#whole - this.#reach - this.#heldFrom));
    this.#held.copyWithin(0, spare, this.#heldCount);
    this.#heldFrom += spare;
    this.#heldCount -= spare;
    if (this.#heldCount + samples.length > this.#held.length) {
      const wider = new Float32Array(2 * (this.#heldCount + samples.length));
      wider.set(this.#held.subarray(0, this.#heldCount));
      this.#held = wider;
    }
    this.#held.set(samples, this.#heldCount);
    this.#heldCount += samples.length;
  }

  #at(whole: number, part: number): number {
    const weights = this.#weightsAt(part);
    const first = whole - this.#reach + 1 - this.#heldFrom;
    const held = this.#held;
    let even = 0;
    let odd = 0;
    for (let i = 0; i < weights.length; i += 2) {
      even += (held[first + i] as number) * (weights[i] as number);
      odd += (held[first + i + 1] as number) * (weights[i + 1] as number);
    }
    return even + odd;
  }

  /** The kernel laid over the inputs for an output that falls `part`/16000 of a sample after one of them. */
  #weightsAt(part: number): Float64Array {
    const known = this.#known.get(part);
    if (known !== undefined) return known;
    const weights = Float64Array.from({ length: 2 * this.#reach }, (_, i) => {
      const t = Math.abs(i + 1 - this.#reach - part / sampleRateHz) * this.#scale * phases;
      if (t >= crossings * phases) return 0;
      const k = Math.floor(t);
      const near = kernel[k] as number;
      return this.#scale * (near + (t - k) * ((kernel[k + 1] as number) - near));
    });
    if (this.#known.size < mostKnown) this.#known.set(part, weights);
    return weights;
  }
}

/** A whole sound at once. */
export function resample(samples: Float32Array, rateHz: number): Float32Array {
  if (rateHz === sampleRateHz) return samples;
  const resampler = new Resampler(rateHz);
  const body = resampler.push(samples);
  const rest = resampler.finish();
  const wanted = Math.ceil((samples.length * sampleRateHz) / rateHz);
  const out = new Float32Array(wanted);
  out.set(body.subarray(0, wanted));
  out.set(rest.subarray(0, Math.max(0, wanted - body.length)), Math.min(wanted, body.length));
  return out;
}
