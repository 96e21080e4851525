/**
 * One text for one value, and its fingerprint: RFC 8785 (JSON Canonicalization Scheme) and SHA-256 (FIPS 180-4).
 * The hash is synchronous and pure script: measured on small entries it beats WebCrypto, whose every call waits a turn,
 * and it answers the same in a browser, a worker and Node.
 */
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, hexToBytes } from "@noble/hashes/utils.js";
import canonicalize from "canonicalize";
import { z } from "zod";

/** 32 bytes as lower-case hex. One spelling only, so that no byte of a record can change unnoticed. */
export const Digest = z.string().regex(/^[0-9a-f]{64}$/, "64 lower-case hex digits");
export type Digest = z.infer<typeof Digest>;

/**
 * What a hash is of. The byte stands in front of what is hashed, so that no text can pass for another kind of thing:
 * the idea of RFC 6962 section 2.1, which parts leaves from nodes the same way.
 */
export const prefixes = { header: 0x00, entry: 0x01, summary: 0x02, signatures: 0x03, seal: 0x04 } as const;

const utf8 = new TextEncoder();

/**
 * @param value Any JSON value that passed its schema. Throws for NaN, infinities, lone surrogates and cycles.
 * @see RFC 8785
 */
export function canonicalText(value: unknown): string {
  // What was read from a canonical file has its names in order already; then the engine's own writer gives the same
  // text (RFC 8785 section 3.2.2 is ECMAScript's), several times faster. It escapes a lone surrogate, which must throw.
  const quick = hasNamesInOrder(value) ? JSON.stringify(value) : undefined;
  if (quick !== undefined && !quick.includes("\\ud")) return quick;
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError("Not a JSON value.");
  return text;
}

/** Plain objects whose names stand in the order of their UTF-16 code units, all the way down; numbers finite. */
function hasNamesInOrder(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value === "string" || typeof value === "boolean" || value === null) return true;
  if (typeof value !== "object") return false;
  if (Array.isArray(value)) return value.every(hasNamesInOrder);
  if ("toJSON" in value) return false;
  let last: string | null = null;
  for (const name of Object.keys(value)) {
    if (last !== null && name <= last) return false;
    if (!hasNamesInOrder((value as Record<string, unknown>)[name])) return false;
    last = name;
  }
  return true;
}

/** SHA-256 as 64 hex digits. */
export const digestOf = (bytes: Uint8Array): Digest => bytesToHex(sha256(bytes));

/** Written over by each hash: an entry is hashed thousands of times in a row, and never two at once. */
let scratch = new Uint8Array(4096);

/** SHA-256 over the prefix byte, then the previous digest's 32 bytes where there is one, then the text in UTF-8. */
export function prefixedDigest(prefix: number, previous: Digest | null, text: string): Digest {
  const start = previous === null ? 1 : 33;
  // No UTF-16 code unit takes more than three bytes of UTF-8.
  if (scratch.length < start + text.length * 3) scratch = new Uint8Array(start + text.length * 3);
  scratch[0] = prefix;
  if (previous !== null) scratch.set(hexToBytes(previous), 1);
  const { written } = utf8.encodeInto(text, scratch.subarray(start));
  return digestOf(scratch.subarray(0, start + written));
}

/** Lower-case hex back to bytes. The text must have passed `Digest` or `Signature`. */
export const bytesOf = (hex: string): Uint8Array<ArrayBuffer> => new Uint8Array(hexToBytes(hex));

export { bytesToHex as hexOf };
