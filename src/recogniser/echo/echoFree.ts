/** Feeds the echo canceller block by block, however the sound is cut. Until something is played it costs nothing. */
import { EchoCanceller } from "./echoCanceller";

const block = EchoCanceller.blockSamples;

export class EchoFree {
  readonly #canceller: EchoCanceller;
  #heard: Float32Array = new Float32Array(0);
  #played: Float32Array = new Float32Array(0);
  #isInUse = false;

  constructor(canceller: EchoCanceller = new EchoCanceller()) {
    this.#canceller = canceller;
  }

  /**
   * @param played As many samples as `heard`, or null if nothing has been played since the beginning.
   * @returns what was heard without the echo, up to a block later.
   */
  take(heard: Float32Array, played: Float32Array | null): Float32Array {
    if (played === null && !this.#isInUse) return heard;
    this.#isInUse = true;
    this.#heard = joined(this.#heard, heard);
    this.#played = joined(this.#played, played ?? new Float32Array(heard.length));
    const whole = Math.floor(Math.min(this.#heard.length, this.#played.length) / block) * block;
    const out = this.#heard.slice(0, whole);
    for (let at = 0; at < whole; at += block) {
      this.#canceller.take(out.subarray(at, at + block), this.#played.subarray(at, at + block));
    }
    this.#heard = this.#heard.slice(whole);
    this.#played = this.#played.slice(whole);
    return out;
  }

  /** The last sound, and what was held for a whole block. */
  finish(last: Float32Array): Float32Array {
    return this.#isInUse ? joined(this.#heard, last) : last;
  }
}

function joined(a: Float32Array, b: Float32Array): Float32Array {
  const both = new Float32Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
