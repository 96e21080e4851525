/** Stored sound that is none of the phrases, as the network sums it up: one byte a number. Made by `npm run negatives`. */
import { z } from "zod";

export const NegativesFile = z.strictObject({
  format: z.literal("gloveside-negatives/1"),
  /** SHA-256 of the phrase model that made the summaries: of no use to another. */
  model: z.string().regex(/^[0-9a-f]{64}$/),
  count: z.int().positive(),
  inputs: z.int().positive(),
  note: z.string(),
});
export type NegativesFile = z.infer<typeof NegativesFile>;

/** @returns the summaries, or null if the files do not belong together or to this model. */
export function readNegatives(text: string, bytes: Uint8Array, modelDigest: string): readonly Float32Array[] | null {
  try {
    const parsed = NegativesFile.safeParse(JSON.parse(text));
    if (!parsed.success) return null;
    const { model, count, inputs } = parsed.data;
    if (model !== modelDigest || bytes.length !== count * inputs) return null;
    const numbers = new Int8Array(bytes.buffer, bytes.byteOffset, bytes.length);
    return Array.from({ length: count }, (_, n) =>
      Float32Array.from(numbers.subarray(n * inputs, (n + 1) * inputs), (x) => x / 127),
    );
  } catch {
    return null;
  }
}

/** States of a recurrent layer lie between −1 and 1. */
export const toBytes = (summaries: readonly Float32Array[]): Uint8Array =>
  new Uint8Array(Int8Array.from(summaries.flatMap((one) => Array.from(one, (x) => Math.round(127 * x)))).buffer);
