/**
 * One note as it is spoken: sound in, and when it is over. It ends by itself after a silence, at its longest, or where
 * nobody speaks; a hand may end it at any moment. Kept as mono 16-bit WAV at 16 kHz, which every browser plays. Pure.
 */
import { sampleRateHz } from "../recogniser/sampleRate";
import { Resampler } from "../recogniser/sound/resample";
import { writeWav } from "../recogniser/sound/writeWav";
import { SoundActivity } from "../recogniser/soundActivity";

export const longestMs = 30_000;
/** Long enough to think between two sentences; our own choice. */
const silenceMs = 2_500;
/** Somebody who has not begun by then says nothing. */
const patienceMs = 8_000;
/** The companion's "recording" may ring on in the room so long; speech that goes on after it is somebody's. */
const ownVoiceMs = 1_200;
/** Shorter is a slip of the hand. */
const shortestMs = 300;

export type Ending = "silence" | "full" | "nobody";

export class SpokenNote {
  readonly #rateHz: number;
  readonly #activity: SoundActivity;
  readonly #resampler: Resampler;
  readonly #parts: Float32Array[] = [];
  #count = 0;
  #hasSpoken = false;
  #quietMs = 0;

  /** @param activity knows the room already, where it has listened before; else it learns it from the note's beginning. */
  constructor(rateHz: number, activity = new SoundActivity(rateHz)) {
    this.#rateHz = rateHz;
    this.#activity = activity;
    this.#resampler = new Resampler(rateHz);
  }

  get lengthMs(): number {
    return Math.round((this.#count * 1000) / this.#rateHz);
  }

  get leftMs(): number {
    return Math.max(0, longestMs - this.lengthMs);
  }

  /** @param samples mono, -1..1. @returns why it is over, or null while it goes on. */
  take(samples: Float32Array): Ending | null {
    const taken = samples.subarray(0, Math.floor((longestMs * this.#rateHz) / 1000) - this.#count);
    this.#parts.push(this.#resampler.push(taken));
    this.#count += taken.length;
    this.#activity.take(samples);
    const { isSpeech } = this.#activity;
    this.#hasSpoken ||= isSpeech && this.lengthMs > ownVoiceMs;
    this.#quietMs = isSpeech ? 0 : this.#quietMs + (samples.length * 1000) / this.#rateHz;
    if (this.leftMs === 0) return "full";
    if (this.#hasSpoken) return this.#quietMs >= silenceMs ? "silence" : null;
    return this.lengthMs >= patienceMs ? "nobody" : null;
  }

  /** @returns the whole WAV file; null where there is too little to be a note. */
  finish(): { readonly wav: Uint8Array; readonly lengthMs: number } | null {
    const { lengthMs } = this;
    if (lengthMs < shortestMs) return null;
    const samples = joined([...this.#parts, this.#resampler.finish()]);
    return { wav: writeWav(samples, sampleRateHz), lengthMs: Math.min(lengthMs, longestMs) };
  }
}

function joined(parts: readonly Float32Array[]): Float32Array {
  const all = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
