/**
 * Whether sound still comes. Fed with what happens and what time it is; says when the microphone is lost, when it is
 * back, and how much sound never came. Time is monotonic milliseconds, handed in. Pure.
 */
import type { LostBecause, SoundEvent } from "./vocabulary";

/** With two ticks of a quarter of a second, or of a whole one in a hidden page, a loss is told within two seconds. */
export const silentLineMs = 1000;
export const tickMs = 250;
/**
 * A busy page gets its chunks late and loses nothing. Only when even the promptest chunk of a window came later than the
 * promptest of the window before, by more than any clock drifts in that time, has sound been lost.
 */
const windowMs = 5000;
const toleranceMs = 40;

export type LossEvent = Extract<SoundEvent, { type: "lost" | "back" | "dropped" }>;

export class LossWatch {
  readonly #rateHz: number;
  readonly #reasons = new Set<LostBecause>();
  #lastChunkMs: number;
  #ticksWithout = 0;
  #receivedMs = 0;
  #lostMs = 0;
  #nextFrame: number | null = null;
  #windowEndsMs: number;
  #leastLagMs = Number.POSITIVE_INFINITY;
  #leastLagBeforeMs = Number.POSITIVE_INFINITY;

  constructor(rateHz: number, nowMs: number) {
    this.#rateHz = rateHz;
    this.#lastChunkMs = nowMs;
    this.#windowEndsMs = nowMs + windowMs;
  }

  get isLost(): boolean {
    return this.#reasons.size > 0;
  }

  /** A chunk came: `firstFrame` is its place in the stream as the audio thread counts, `count` its samples. */
  chunk(nowMs: number, firstFrame: number, count: number): readonly LossEvent[] {
    this.#lastChunkMs = nowMs;
    this.#ticksWithout = 0;
    const skipped = this.#nextFrame === null ? 0 : Math.max(0, firstFrame - this.#nextFrame);
    this.#nextFrame = firstFrame + count;
    this.#receivedMs += ((skipped + count) * 1000) / this.#rateHz;
    const found = this.#without("no-frames");
    return [...found, ...this.#dropped((skipped * 1000) / this.#rateHz, true), ...this.#slipped(nowMs)];
  }

  /**
   * Time passed. Call every `tickMs`. One tick without sound proves nothing: after a busy moment of the page the tick may
   * come before the chunks that wait behind it.
   */
  tick(nowMs: number): readonly LossEvent[] {
    this.#ticksWithout += 1;
    return this.#ticksWithout >= 2 && nowMs - this.#lastChunkMs >= silentLineMs ? this.#with("no-frames") : [];
  }

  /** The track or the audio context said that it stopped, or goes on. "ended" never goes on. */
  stopped(reason: LostBecause): readonly LossEvent[] {
    return this.#with(reason);
  }
  resumed(reason: Exclude<LostBecause, "ended">): readonly LossEvent[] {
    return this.#without(reason);
  }

  #with(reason: LostBecause): readonly LossEvent[] {
    const wasLost = this.isLost;
    this.#reasons.add(reason);
    return wasLost ? [] : [{ type: "lost", reason }];
  }

  #without(reason: LostBecause): readonly LossEvent[] {
    const wasLost = this.isLost;
    this.#reasons.delete(reason);
    return wasLost && !this.isLost ? [{ type: "back" }] : [];
  }

  #dropped(lostMs: number, isHere: boolean): readonly LossEvent[] {
    if (lostMs <= 0) return [];
    this.#lostMs += lostMs;
    return [{ type: "dropped", lostMs, totalMs: this.#lostMs, isHere }];
  }

  /** Sound that lags further behind time, window after window, was lost somewhere on the way. */
  #slipped(nowMs: number): readonly LossEvent[] {
    this.#leastLagMs = Math.min(this.#leastLagMs, nowMs - this.#receivedMs);
    if (nowMs < this.#windowEndsMs) return [];
    const slippedMs = this.#leastLagMs - this.#leastLagBeforeMs;
    this.#leastLagBeforeMs = this.#leastLagMs;
    this.#leastLagMs = Number.POSITIVE_INFINITY;
    this.#windowEndsMs = nowMs + windowMs;
    return slippedMs > toleranceMs ? this.#dropped(slippedMs, false) : [];
  }
}
