/**
 * Whether sound still comes. Fed with what happens and what time it is; says when the microphone is lost, when it is
 * back, and how much sound never came. Time is monotonic milliseconds, handed in. Pure.
 */
import type { LostBecause, SoundEvent } from "./vocabulary";

export const silentLineMs = 2000;
/** Chunks come unevenly; only more than this missing is called dropped. */
const toleranceMs = 150;

export type LossEvent = Extract<SoundEvent, { type: "lost" | "back" | "dropped" }>;

export class LossWatch {
  readonly #rateHz: number;
  readonly #reasons = new Set<LostBecause>();
  #lastChunkMs: number;
  /** The least lag of sound behind time seen so far, and what has been reported as missing since. */
  #leastLagMs = Number.POSITIVE_INFINITY;
  #receivedMs = 0;
  #reportedMs = 0;
  #nextFrame: number | null = null;
  #skippedMs = 0;

  constructor(rateHz: number, nowMs: number) {
    this.#rateHz = rateHz;
    this.#lastChunkMs = nowMs;
  }

  get isLost(): boolean {
    return this.#reasons.size > 0;
  }

  /** A chunk came: `firstFrame` is its place in the stream as the audio thread counts, `count` its samples. */
  chunk(nowMs: number, firstFrame: number, count: number): readonly LossEvent[] {
    this.#lastChunkMs = nowMs;
    this.#receivedMs += (count * 1000) / this.#rateHz;
    if (this.#nextFrame !== null && firstFrame > this.#nextFrame) {
      this.#skippedMs += ((firstFrame - this.#nextFrame) * 1000) / this.#rateHz;
    }
    this.#nextFrame = firstFrame + count;
    const found = this.#without("no-frames");
    return this.isLost ? found : [...found, ...this.#dropped(nowMs)];
  }

  /** Time passed. Call about twice a second. */
  tick(nowMs: number): readonly LossEvent[] {
    return nowMs - this.#lastChunkMs >= silentLineMs ? this.#with("no-frames") : [];
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

  /** Sound that lags further behind time than it once did is sound that was lost on the way. */
  #dropped(nowMs: number): readonly LossEvent[] {
    const lagMs = nowMs - this.#receivedMs;
    this.#leastLagMs = Math.min(this.#leastLagMs, lagMs);
    const missingMs = Math.max(lagMs - this.#leastLagMs, this.#skippedMs);
    const lostMs = missingMs - this.#reportedMs;
    if (lostMs < toleranceMs) return [];
    this.#reportedMs = missingMs;
    return [{ type: "dropped", lostMs, totalMs: missingMs }];
  }
}
