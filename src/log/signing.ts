/**
 * Ed25519 (RFC 8032). The private key is WebCrypto's and cannot be taken out; checking uses WebCrypto where it is and
 * pure script elsewhere, under the same strict rule (no ZIP 215 leniency). The script is fetched where it is needed.
 */
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

/** Whether the signature is this key's over this message. A key that is not a point is simply not the signer. */
export async function isSignedBy(key: PublicKey, message: Uint8Array, signature: Signature): Promise<boolean> {
  try {
    return await crypto.subtle.verify("Ed25519", await imported(key), bytesOf(signature), message.slice());
  } catch {
    const { isSignedByScript } = await import("./signedByScript");
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

/** A key as people compare it: sixteen groups of four digits. */
export const fingerprint = (key: PublicKey): string => key.match(/.{4}/g)?.join(" ") ?? key;
