/**
 * Sealed to a public key, so that who seals cannot open: HPKE of RFC 9180 in base mode, DHKEM(P-256, HKDF-SHA256),
 * HKDF-SHA256, AES-256-GCM. One agreement seals several texts in a row, each under the next nonce.
 */
import { expand, extract } from "@noble/hashes/hkdf.js";
import { sha256 } from "@noble/hashes/sha2.js";
import { concatBytes } from "@noble/hashes/utils.js";

export type Bytes = Uint8Array<ArrayBuffer>;

/** The public half is 65 bytes, uncompressed (SEC 1 section 2.3.3). */
export type OpeningPair = { readonly privateKey: CryptoKey; readonly publicKey: Bytes };
export type Sealed = { readonly enc: Bytes; readonly bodies: readonly Bytes[] };

const curve = { name: "ECDH", namedCurve: "P-256" } as const;
/** RFC 9180 sections 7.1 to 7.3. The number of the cipher stands in the key schedule. */
const kemId = 0x0010;
const kdfId = 0x0001;
export const ciphers = { aes128: { id: 0x0001, keyBytes: 16 }, aes256: { id: 0x0002, keyBytes: 32 } } as const;
type Cipher = (typeof ciphers)[keyof typeof ciphers];

const utf8 = new TextEncoder();
const none = new Uint8Array(0);
const twoBytes = (value: number): Uint8Array => new Uint8Array([value >> 8, value & 0xff]);
const kemSuite = concatBytes(utf8.encode("KEM"), twoBytes(kemId));
const suiteOf = ({ id }: Cipher) => concatBytes(utf8.encode("HPKE"), twoBytes(kemId), twoBytes(kdfId), twoBytes(id));
const version = utf8.encode("HPKE-v1");

/** RFC 9180 section 4. */
const labelledExtract = (suite: Uint8Array, salt: Uint8Array, label: string, ikm: Uint8Array) =>
  extract(sha256, concatBytes(version, suite, utf8.encode(label), ikm), salt);
const labelledExpand = (suite: Uint8Array, prk: Uint8Array, label: string, info: Uint8Array, length: number) =>
  expand(sha256, prk, concatBytes(twoBytes(length), version, suite, utf8.encode(label), info), length);

/** Its private half can be taken out once, to be locked with a passphrase. */
export async function newOpeningPair(): Promise<OpeningPair> {
  const made = await crypto.subtle.generateKey(curve, true, ["deriveBits"]);
  return {
    privateKey: made.privateKey,
    publicKey: new Uint8Array(await crypto.subtle.exportKey("raw", made.publicKey)),
  };
}

export const privateBytes = async ({ privateKey }: OpeningPair): Promise<Bytes> =>
  new Uint8Array(await crypto.subtle.exportKey("pkcs8", privateKey));

/** From here on it cannot be taken out any more. Rejects for bytes that are no such key. */
export const privateFrom = (pkcs8: Bytes): Promise<CryptoKey> =>
  crypto.subtle.importKey("pkcs8", pkcs8, curve, false, ["deriveBits"]);

async function sharedSecret(own: CryptoKey, other: Bytes, enc: Bytes, recipient: Bytes): Promise<Uint8Array> {
  const theirs = await crypto.subtle.importKey("raw", other, curve, false, []);
  const agreed = new Uint8Array(await crypto.subtle.deriveBits({ name: "ECDH", public: theirs }, own, 256));
  const prk = labelledExtract(kemSuite, none, "eae_prk", agreed);
  return labelledExpand(kemSuite, prk, "shared_secret", concatBytes(enc, recipient), 32);
}

/** RFC 9180 section 5.1, base mode. */
async function schedule(secret: Uint8Array, info: Uint8Array, cipher: Cipher) {
  const suite = suiteOf(cipher);
  const context = concatBytes(
    new Uint8Array([0]),
    labelledExtract(suite, none, "psk_id_hash", none),
    labelledExtract(suite, none, "info_hash", info),
  );
  const prk = labelledExtract(suite, secret, "secret", none);
  const raw = new Uint8Array(labelledExpand(suite, prk, "key", context, cipher.keyBytes));
  const key = await crypto.subtle.importKey("raw", raw, "AES-GCM", false, ["encrypt", "decrypt"]);
  return { key, baseNonce: labelledExpand(suite, prk, "base_nonce", context, 12) };
}

/** RFC 9180 section 5.2: the base nonce, with the place in the row mixed in. */
function nonceAt(base: Uint8Array, place: number): Bytes {
  const nonce = new Uint8Array(base);
  const last = new DataView(nonce.buffer);
  last.setUint32(8, last.getUint32(8) ^ place);
  return nonce;
}

/** @param about sealed with every text, in the clear elsewhere: what it belongs to. */
export async function sealTo(
  publicKey: Bytes,
  info: Uint8Array,
  about: Bytes,
  texts: readonly Uint8Array[],
): Promise<Sealed> {
  const ours = await newOpeningPair();
  const secret = await sharedSecret(ours.privateKey, publicKey, ours.publicKey, publicKey);
  const { key, baseNonce } = await schedule(secret, info, ciphers.aes256);
  const bodies = await Promise.all(
    texts.map(async (text, place) => {
      const how = { name: "AES-GCM", iv: nonceAt(baseNonce, place), additionalData: about };
      return new Uint8Array(await crypto.subtle.encrypt(how, key, new Uint8Array(text)));
    }),
  );
  return { enc: ours.publicKey, bodies };
}

/** Opens the text at one place of the row. Rejects where it is not by this key, for this purpose, at this place, as sealed. */
export async function openSealed(
  pair: OpeningPair,
  info: Uint8Array,
  about: Bytes,
  { enc, bodies }: Sealed,
  place: number,
  cipher: Cipher = ciphers.aes256,
): Promise<Bytes> {
  const secret = await sharedSecret(pair.privateKey, enc, enc, pair.publicKey);
  const { key, baseNonce } = await schedule(secret, info, cipher);
  const how = { name: "AES-GCM", iv: nonceAt(baseNonce, place), additionalData: about };
  return new Uint8Array(await crypto.subtle.decrypt(how, key, bodies[place] ?? new Uint8Array(0)));
}
