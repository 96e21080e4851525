/**
 * Runs in the audio thread: gathers 128-sample blocks into chunks of 1024, mixed to mono, and hands them over: the
 * microphone (input 0) and beside it what the companion plays meanwhile (input 1), sample for sample. It stands
 * alone (no imports at run time) and is served as a file of its own, so that a strict Content-Security-Policy lets it in.
 */

declare const currentFrame: number;
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}

const chunkSamples = 1024;

class Capture extends AudioWorkletProcessor {
  #chunk = new Float32Array(chunkSamples);
  #played = new Float32Array(chunkSamples);
  #hasPlayed = false;
  #filled = 0;

  /** An input has one array of 128 for each channel, or none while nothing is connected: then time goes on in silence. */
  process(inputs: readonly (readonly Float32Array[])[], outputs: readonly (readonly Float32Array[])[]): boolean {
    const channels = inputs[0] ?? [];
    const own = inputs[1] ?? [];
    const length = channels[0]?.length ?? outputs[0]?.[0]?.length ?? 128;
    for (let n = 0; n < length; n++) {
      let sum = 0;
      for (const channel of channels) sum += channel[n] ?? 0;
      let ownSum = 0;
      for (const channel of own) ownSum += channel[n] ?? 0;
      if (ownSum !== 0) this.#hasPlayed = true;
      this.#played[this.#filled] = own.length > 0 ? ownSum / own.length : 0;
      this.#chunk[this.#filled++] = channels.length > 0 ? sum / channels.length : 0;
      if (this.#filled === chunkSamples) this.#handOver(currentFrame + n + 1 - chunkSamples);
    }
    return true;
  }

  #handOver(firstFrame: number): void {
    const samples = this.#chunk;
    this.#chunk = new Float32Array(chunkSamples);
    const played = this.#hasPlayed ? this.#played : null;
    this.#played = new Float32Array(chunkSamples);
    this.#hasPlayed = false;
    this.#filled = 0;
    this.port.postMessage({ firstFrame, samples, played }, played ? [samples.buffer, played.buffer] : [samples.buffer]);
  }
}

registerProcessor("capture", Capture);
