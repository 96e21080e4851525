/**
 * Ed25519 (RFC 8032). The private key is WebCrypto's and cannot be taken out; checking uses WebCrypto where it is and
 * pure script elsewhere, under the same strict rule (no ZIP 215 leniency).
 */
import { ed25519 } from "@noble/curves/ed25519.js";
import { bytesOf, hexOf } from "./canonical";
import type { PublicKey, Signature } from "./header";
import type { Signer } from "./journal";

/** A fresh pair whose private half stays inside the browser or Node. */
export const newKeyPair = (): Promise<CryptoKeyPair> =>
  crypto.subtle.generateKey("Ed25519", false, ["sign", "verify"]) as Promise<CryptoKeyPair>;

/** A signer over a pair; sign rejects where the key does not serve. */
export async function signerOf(pair: CryptoKeyPair): Promise<Signer> {
  const publicKey = hexOf(new Uint8Array(await crypto.subtle.exportKey("raw", pair.publicKey)));
  return {
    publicKey,
    sign: async (message) =>
      hexOf(new Uint8Array(await crypto.subtle.sign("Ed25519", pair.privateKey, message.slice()))),
  };
}

/** A signer that lives as long as this page or process. */
export const newSigner = async (): Promise<Signer> => signerOf(await newKeyPair());

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

/** Whether the signature is this key's over this message. A key that is not a point is simply not the signer. */
export async function isSignedBy(key: PublicKey, message: Uint8Array, signature: Signature): Promise<boolean> {
  try {
    return await crypto.subtle.verify("Ed25519", await imported(key), bytesOf(signature), message.slice());
  } catch {
    return isSignedByScript(key, message, signature);
  }
}

/** Heads of one record are checked by the hundred, all under one key. */
let last: { readonly key: PublicKey; readonly imported: Promise<CryptoKey> } | null = null;
function imported(key: PublicKey): Promise<CryptoKey> {
  if (last?.key !== key) {
    last = { key, imported: crypto.subtle.importKey("raw", bytesOf(key), "Ed25519", false, ["verify"]) };
  }
  return last.imported;
}

/** The same without WebCrypto: older browsers, pages from a file. */
export function isSignedByScript(key: PublicKey, message: Uint8Array, signature: Signature): boolean {
  try {
    return ed25519.verify(bytesOf(signature), message, bytesOf(key), { zip215: false });
  } catch {
    return false;
  }
}

/** A key as people compare it: sixteen groups of four digits. */
export const fingerprint = (key: PublicKey): string => key.match(/.{4}/g)?.join(" ") ?? key;
