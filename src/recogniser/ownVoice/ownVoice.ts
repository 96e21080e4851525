/**
 * What one artist taught the ear: a last layer of their own, thresholds that go with it, and words of their own as templates.
 * It says something about a person's voice, so it is biometric data: kept apart, never sent, left out of backups.
 */
import { z } from "zod";
import { addressWords, type CommandId, commandIds } from "../../intent/phrases";
import type { Head } from "../network/weightsOf";
import type { Template } from "./templates";

const Share = z.number().min(0).max(1);
const Base64 = z
  .string()
  .regex(/^[A-Za-z0-9+/]*={0,2}$/)
  .max(400_000);

export const OwnVoice = z.strictObject({
  format: z.literal("gloveside-own-voice/1"),
  /** SHA-256 of the phrase model it was taught to; another model cannot use it. */
  model: z.string().regex(/^[0-9a-f]{64}$/),
  address: z.enum(addressWords),
  consentAt: z.iso.datetime(),
  taughtAt: z.iso.datetime(),
  /** 32-bit floats, little-endian: outputs × inputs, then one for each output. Null: no phrase of ours was taught. */
  head: z.strictObject({ weights: Base64, bias: Base64 }).nullable(),
  thresholds: z.partialRecord(z.enum(commandIds as [CommandId, ...CommandId[]]), Share),
  /** Words of the artist's own, beside the usual ones; each take is a row of 8-bit embeddings. */
  words: z
    .array(
      z.strictObject({
        command: z.enum(commandIds as [CommandId, ...CommandId[]]),
        size: z.int().min(1).max(1000),
        takes: z.array(Base64).min(1).max(5),
      }),
    )
    .max(60),
  /** How many takes were learnt, and what share of takes that were held back was understood before and after. */
  figures: z.strictObject({ takes: z.int().min(0), before: Share, after: Share }),
});
export type OwnVoice = z.infer<typeof OwnVoice>;

/** @returns null for anything that is not one; read as hostile. */
export function readOwnVoice(value: unknown): OwnVoice | null {
  const parsed = OwnVoice.safeParse(value);
  return parsed.success ? parsed.data : null;
}

export const packHead = ({ weights, bias }: Head): NonNullable<OwnVoice["head"]> => ({
  weights: toBase64(bytesOf(weights)),
  bias: toBase64(bytesOf(bias)),
});

/** @returns null where it does not have the shape that this model needs. */
export function unpackHead(packed: NonNullable<OwnVoice["head"]>, like: Head): Head | null {
  const [weights, bias] = [floatsIn(packed.weights), floatsIn(packed.bias)];
  const fits = weights.length === like.weights.length && bias.length === like.bias.length;
  return fits && [...weights, ...bias].every(Number.isFinite) ? { weights, bias } : null;
}

export const packTemplate = ({ steps }: Template): string =>
  toBase64(
    new Uint8Array(Int8Array.from(steps.flatMap((step) => Array.from(step, (x) => Math.round(127 * x)))).buffer),
  );

export function unpackTemplate(packed: string, size: number): Template {
  const numbers = new Int8Array(fromBase64(packed).buffer);
  return {
    steps: Array.from({ length: Math.floor(numbers.length / size) }, (_, n) =>
      Float32Array.from(numbers.subarray(n * size, (n + 1) * size), (x) => x / 127),
    ),
  };
}

function bytesOf(numbers: Float32Array): Uint8Array {
  const bytes = new Uint8Array(4 * numbers.length);
  const view = new DataView(bytes.buffer);
  for (const [n, x] of numbers.entries()) view.setFloat32(4 * n, x, true);
  return bytes;
}
function floatsIn(text: string): Float32Array {
  const bytes = fromBase64(text);
  const view = new DataView(bytes.buffer);
  return Float32Array.from({ length: Math.floor(bytes.length / 4) }, (_, n) => view.getFloat32(4 * n, true));
}
function toBase64(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  try {
    return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  } catch {
    return new Uint8Array(0);
  }
}
