/**
 * A salted commitment: the log keeps what binds it to something personal, and not the thing itself. While the thing and its
 * salt are kept beside the log anyone can check that they belong to the entry; once both are erased the entry tells nothing
 * about them, and the chain still holds.
 *
 *   commitment = SHA-256("gloveside-commitment/1" 0x00 | salt, 32 bytes | content)
 *
 * A salt of 256 random bits: without it, a short content could be found by trying (NIST SP 800-107 r1 on hiding by hash).
 */
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, randomBytes } from "@noble/hashes/utils.js";
import type { Digest } from "./canonical";

const saltBytes = 32;
const kind = new TextEncoder().encode("gloveside-commitment/1\0");

export const newSalt = (): Uint8Array => randomBytes(saltBytes);

/** @param salt 32 bytes of `newSalt`, never used for anything else. */
export function commitmentTo(content: Uint8Array, salt: Uint8Array): Digest {
  if (salt.length !== saltBytes) throw new RangeError(`a salt has ${saltBytes} bytes`);
  return bytesToHex(sha256.create().update(kind).update(salt).update(content).digest());
}

/** Whether this content, with this salt, is what was committed to. */
export const isWhatWasCommitted = (commitment: Digest, content: Uint8Array, salt: Uint8Array): boolean =>
  salt.length === saltBytes && commitmentTo(content, salt) === commitment;
