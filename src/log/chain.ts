/**
 * The chain of heads. Head 0 is of the header; head n is of entry n and of head n - 1:
 *
 *   head 0 = SHA-256(00 ‖ canonical header)      head n = SHA-256(01 ‖ head n-1 ‖ canonical entry n)
 *
 * and every head is signed, so that an unfinished session can be checked too.
 */
import { bytesOf, canonicalText, type Digest, prefixedDigest, prefixes } from "./canonical";
import type { LogEntry } from "./entry";
import type { Header } from "./header";

/** @returns head 0. Never throws for a value that passed `Header`. */
export const headOfHeader = (header: Header): Digest => prefixedDigest(prefixes.header, null, canonicalText(header));

/**
 * Links an entry to the one before it.
 * @param previous Head n - 1, taken from the chain and never from the entry.
 * @returns head n. Never throws for a value that passed `LogEntry`.
 */
export const headOf = (previous: Digest, entry: LogEntry): Digest => headOfText(previous, canonicalText(entry));

/** The same for an entry already written out by RFC 8785. */
export const headOfText = (previous: Digest, text: string): Digest => prefixedDigest(prefixes.entry, previous, text);

const labels = { head: "gloveside head 1\n", seal: "gloveside seal 1\n" } as const;

/** The bytes that are signed: a label, so that a signature serves for one thing only, then the 32 bytes. */
export function signedMessage(what: keyof typeof labels, digest: Digest): Uint8Array<ArrayBuffer> {
  const label = new TextEncoder().encode(labels[what]);
  const message = new Uint8Array(label.length + 32);
  message.set(label);
  message.set(bytesOf(digest), label.length);
  return message;
}
