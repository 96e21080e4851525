/**
 * When there is sound, and when some of it lasts like speech: for the `soundstart` and `speechstart` of the Web Speech
 * API and for the screen. By energy alone, above a floor that follows the room; it decides nothing. Pure.
 */

export type SoundChange = "soundstart" | "speechstart" | "speechend" | "soundend";

const frameMs = 20;
/** Decibels above the floor to begin and to go on; our own choice, by ear. */
const beginDb = 9;
const goOnDb = 6;
const speechAfterMs = 120;
const endAfterMs = 600;
/** The floor falls at once and rises by this much a second, so that a machine switched on becomes the room. */
const riseDbPerSecond = 3;
const quietestDb = -80;

export class SoundActivity {
  readonly #frame: number;
  #squares = 0;
  #count = 0;
  #floorDb = Number.POSITIVE_INFINITY;
  #loudMs = 0;
  #quietMs = 0;
  #state: "quiet" | "sound" | "speech" = "quiet";

  constructor(rateHz: number) {
    this.#frame = Math.round((rateHz * frameMs) / 1000);
  }

  /** Whether what sounds now lasts like speech; it counts on for a moment after its end. */
  get isSpeech(): boolean {
    return this.#state === "speech";
  }

  take(samples: Float32Array): readonly SoundChange[] {
    const changes: SoundChange[] = [];
    for (const sample of samples) {
      this.#squares += sample * sample;
      if (++this.#count < this.#frame) continue;
      changes.push(...this.#frameOf(10 * Math.log10(this.#squares / this.#count + 10 ** (quietestDb / 10))));
      this.#squares = 0;
      this.#count = 0;
    }
    return changes;
  }

  #frameOf(levelDb: number): readonly SoundChange[] {
    this.#floorDb = Math.min(levelDb, this.#floorDb + (riseDbPerSecond * frameMs) / 1000);
    const isLoud = levelDb > this.#floorDb + (this.#state === "quiet" ? beginDb : goOnDb);
    this.#loudMs = isLoud ? this.#loudMs + frameMs : this.#loudMs;
    this.#quietMs = isLoud ? 0 : this.#quietMs + frameMs;
    if (this.#state === "quiet") {
      if (!isLoud) return [];
      this.#loudMs = frameMs;
      this.#state = "sound";
      return ["soundstart"];
    }
    if (this.#quietMs >= endAfterMs) {
      const wasSpeech = this.#state === "speech";
      this.#state = "quiet";
      return wasSpeech ? ["speechend", "soundend"] : ["soundend"];
    }
    if (this.#state === "speech" || this.#loudMs < speechAfterMs) return [];
    this.#state = "speech";
    return ["speechstart"];
  }
}
