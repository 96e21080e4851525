/** The artist's own words, listened for all the time: the nearest take decides how likely each command is. */
import type { CommandId } from "../../intent/phrases";
import type { PhraseModel } from "../network/loadModel";
import { affineOf } from "../network/weightsOf";
import type { OwnVoice } from "./ownVoice";
import { unpackTemplate } from "./ownVoice";
import { TemplateMatch, unit } from "./templates";

/**
 * Mean distance at which a phrase is as likely as not. Measured with synthetic Spanish and the first shipped model: the same
 * voice lies below 0.12, over a machine at 10 dB below 0.20, other phrases above 0.29; one exploratory run on two synthetic voices.
 */
export const evenDistance = 0.235;
const softness = 0.012;

export const likelihood = (distance: number): number => 1 / (1 + Math.exp((distance - evenDistance) / softness));

/** Embeddings as they are compared: each feature on its own scale, the whole of length one. */
export function compared(model: PhraseModel): (embedding: Float32Array) => Float32Array {
  const { scale, shift } = affineOf(model);
  return (embedding) => unit(embedding.map((x, k) => x * (scale[k] as number) + (shift[k] as number)));
}

export class OwnWords {
  readonly #compared: (embedding: Float32Array) => Float32Array;
  readonly #words: readonly OwnVoice["words"][number][];
  #matches: readonly { readonly command: CommandId; readonly takes: readonly TemplateMatch[] }[] = [];

  constructor(model: PhraseModel, words: OwnVoice["words"]) {
    this.#compared = compared(model);
    this.#words = words.filter(({ size }) => size === model.file.stream.embeddingSize);
    this.reset();
  }

  /** Forgets what was in the air. */
  reset(): void {
    this.#matches = this.#words.map(({ command, size, takes }) => ({
      command,
      takes: takes.map((take) => new TemplateMatch(unpackTemplate(take, size))),
    }));
  }

  /** The newest embedding. @returns how likely each taught command has just been said, 0..1. */
  step(embedding: Float32Array): readonly (readonly [CommandId, number])[] {
    if (this.#matches.length === 0) return [];
    const now = this.#compared(embedding);
    return this.#matches.map(({ command, takes }) => [
      command,
      likelihood(takes.reduce((least, take) => Math.min(least, take.step(now)), Number.POSITIVE_INFINITY)),
    ]);
  }
}
