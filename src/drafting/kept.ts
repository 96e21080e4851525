/**
 * The studio's own protocols as they are kept: drafts, which nobody works by, and proved ones. A proof holds for one
 * digest and one state of the judging code; where either differs the protocol is not offered until it is proved again.
 */
import { z } from "zod";
import type { Verdict } from "../check/checkProtocol";
import { Digest } from "../log/canonical";
import { Protocol } from "../session/protocol";
import { asProtocol } from "../session/readProtocol";
import { protocolDigest } from "./version";

/** The shape, and every name that it uses there. */
const SoundProtocol = Protocol.refine((protocol) => asProtocol(protocol).ok, "names what is not there");

export const Proof = z.strictObject({
  digest: Digest,
  /** Digest of the code that judged: rules, chart and station. */
  by: z.string().min(1).max(64),
  states: z.int().min(0),
  transitions: z.int().min(0),
  /** Epoch ms. */
  atMs: z.int(),
});
export type Proof = z.infer<typeof Proof>;

export const ProtocolRow = z.strictObject({ protocol: SoundProtocol, proof: Proof });
export type ProtocolRow = z.infer<typeof ProtocolRow>;

export const DraftRow = z.strictObject({
  protocol: SoundProtocol,
  /** As it was saved last, which the next version counts from; null where it never was. */
  saved: SoundProtocol.nullable(),
  /** Epoch ms. */
  changedAtMs: z.int(),
});
export type DraftRow = z.infer<typeof DraftRow>;

/** @returns null unless the verdict is "proved": breaches and "not proved" both count as no. */
export function proofOf(protocol: Protocol, verdict: Verdict, by: string, atMs: number): Proof | null {
  if (verdict.verdict !== "proved") return null;
  const { states, transitions } = verdict;
  return { digest: protocolDigest(protocol), by, states, transitions, atMs };
}

/** Whether a session may be worked by it, judged by the code that is here now. */
export const isProved = ({ protocol, proof }: ProtocolRow, by: string): boolean =>
  proof.by === by && proof.digest === protocolDigest(protocol);
