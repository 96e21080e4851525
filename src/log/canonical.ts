/**
 * One text for one value, and its fingerprint: RFC 8785 (JSON Canonicalization Scheme) and SHA-256 (FIPS 180-4).
 * The hash is synchronous and pure script: measured on small entries it beats WebCrypto, whose every call waits a turn,
 * and it answers the same in a browser, a worker and Node.
 */
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
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
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError("Not a JSON value.");
  return text;
}

/** SHA-256 as 64 hex digits. */
export const digestOf = (bytes: Uint8Array): Digest => bytesToHex(sha256(bytes));

/** SHA-256 over the prefix byte, then the previous digest's 32 bytes where there is one, then the text in UTF-8. */
export function prefixedDigest(prefix: number, previous: Digest | null, text: string): Digest {
  const body = utf8.encode(text);
  const start = previous === null ? 1 : 33;
  const bytes = new Uint8Array(start + body.length);
  bytes[0] = prefix;
  if (previous !== null) bytes.set(bytesOf(previous), 1);
  bytes.set(body, start);
  return digestOf(bytes);
}

/** Lower-case hex back to bytes. The text must have passed `Digest` or `Signature`. */
export function bytesOf(hex: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(hex.length / 2);
  for (let i = 0; i < bytes.length; i++) bytes[i] = Number.parseInt(hex.slice(i * 2, i * 2 + 2), 16);
  return bytes;
}

export { bytesToHex as hexOf };
