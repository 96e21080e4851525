/** The closing seal: says how many entries there are, what they come to, and signs it all once more. */
import { z } from "zod";
import { canonicalText, Digest, prefixedDigest, prefixes } from "./canonical";
import { signedMessage } from "./chain";
import { Signature } from "./header";
import type { Signer } from "./journal";
import { Summary } from "./summary";
import { WallTime } from "./wallTime";

export const SealBody = z.strictObject({
  sealedAt: WallTime,
  entries: z.number().int().min(1),
  head: Digest,
  /** SHA-256 of 02 and the canonical summary. */
  summary: Digest,
  /** SHA-256 of 03 and all heads' signatures, header first, as one run of hex: none can be changed or left out. */
  signatures: Digest,
});
export const Seal = z.strictObject({ ...SealBody.shape, signature: Signature });

/** What stands after the last entry of a finished session. */
export const Closing = z.strictObject({ summary: Summary, seal: Seal });

export type SealBody = z.infer<typeof SealBody>;
export type Seal = z.infer<typeof Seal>;
export type Closing = z.infer<typeof Closing>;

export const digestOfSummary = (summary: unknown): Digest =>
  prefixedDigest(prefixes.summary, null, canonicalText(summary));
export const digestOfSignatures = (signatures: readonly Signature[]): Digest =>
  prefixedDigest(prefixes.signatures, null, signatures.join(""));
/** What the seal's own signature is over. */
export const messageOfSeal = (body: SealBody) =>
  signedMessage("seal", prefixedDigest(prefixes.seal, null, canonicalText(body)));

/** Rejects only where the key does not sign. */
export async function makeClosing(
  kept: { entries: readonly unknown[]; signatures: readonly Signature[]; head: Digest },
  summary: Summary,
  sealedAt: WallTime,
  signer: Signer,
): Promise<Closing> {
  const body: SealBody = {
    sealedAt,
    entries: kept.entries.length,
    head: kept.head,
    summary: digestOfSummary(summary),
    signatures: digestOfSignatures(kept.signatures),
  };
  return { summary, seal: { ...body, signature: await signer.sign(messageOfSeal(body)) } };
}
