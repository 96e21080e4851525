/** Runs a recording through the network and keeps what it made of each 80 ms: for teaching, not for listening. */
import { spanSamples, stepSamples } from "../frontEnd/melFrames";
import type { PhraseNet } from "../network/phraseNet";
import { sampleRateHz } from "../sampleRate";

export interface Moment {
  /** End of the sound that it was made of, from the start of the recording. */
  readonly atMs: number;
  readonly embedding: Float32Array;
  readonly summary: Float32Array;
}

/** Silence after the recording, so that a phrase at its very end is heard whole. */
const afterMs = 640;

/** @param sound 16 kHz mono, −1..1, as if silence had been before it. */
export function momentsOf(net: PhraseNet, sound: Float32Array): readonly Moment[] {
  const padded = new Float32Array(sound.length + (afterMs * sampleRateHz) / 1000 + spanSamples);
  padded.set(sound);
  const moments: Moment[] = [];
  net.hearSilence();
  for (let at = 0; at + spanSamples <= padded.length; at += stepSamples) {
    if (!net.step(padded, at)) continue;
    const atMs = ((at + spanSamples) * 1000) / sampleRateHz;
    moments.push({ atMs, embedding: Float32Array.from(net.embedding), summary: Float32Array.from(net.summary) });
  }
  return moments;
}
