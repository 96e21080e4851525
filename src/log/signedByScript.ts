/** Ed25519 (RFC 8032) in pure script, where WebCrypto has none: older browsers, pages from a file; and keys from a secret. */
import { ed25519 } from "@noble/curves/ed25519.js";
import { bytesOf, hexOf } from "./canonical";
import type { PublicKey, Signature } from "./header";
import type { Signer } from "./journal";

/** Under the strict rule of `isSignedBy`. */
export function isSignedByScript(key: PublicKey, message: Uint8Array, signature: Signature): boolean {
  try {
    return ed25519.verify(bytesOf(signature), message, bytesOf(key), { zip215: false });
  } catch {
    return false;
  }
}

/**
 * From a secret of 32 bytes, for published vectors and repeatable tests.
 * @see RFC 8410 section 7 for the sixteen bytes in front.
 */
export async function signerFromSecret(secret: Uint8Array): Promise<Signer> {
  const pkcs8 = new Uint8Array([...bytesOf("302e020100300506032b657004220420"), ...secret]);
  const privateKey = await crypto.subtle.importKey("pkcs8", pkcs8, "Ed25519", false, ["sign"]);
  return {
    publicKey: hexOf(ed25519.getPublicKey(secret)),
    sign: async (message) => hexOf(new Uint8Array(await crypto.subtle.sign("Ed25519", privateKey, message.slice()))),
  };
}
