import { expect, test } from "vitest";
import { bytesOf } from "./canonical";
import { isSignedByScript, signerFromSecret } from "./signedByScript";
import { fingerprint, isSignedBy, newKeyPair, newSigner } from "./signing";

// RFC 8032 section 7.1, tests 1 to 3: secret, public key, message, signature.
const published = [
  [
    "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
    "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
    "",
    "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
  ],
  [
    "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
    "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
    "72",
    "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
  ],
  [
    "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
    "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
    "af82",
    "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
  ],
] as const;

test.each(published)("signs and checks RFC 8032 vector %#", async (secret, publicKey, message, signature) => {
  const signer = await signerFromSecret(bytesOf(secret));
  expect(signer.publicKey).toBe(publicKey);
  expect(await signer.sign(bytesOf(message))).toBe(signature);
  expect(await isSignedBy(publicKey, bytesOf(message), signature)).toBe(true);
  expect(isSignedByScript(publicKey, bytesOf(message), signature)).toBe(true);
});

test.each(published)("refuses RFC 8032 vector %# under another message or key", async (_s, key, message, signature) => {
  const other = new Uint8Array([...bytesOf(message), 0]);
  const otherKey = published.map((vector) => vector[1]).find((candidate) => candidate !== key) ?? "";
  const answers = [
    await isSignedBy(key, other, signature),
    await isSignedBy(otherKey, bytesOf(message), signature),
    isSignedByScript(key, other, signature),
    isSignedByScript(otherKey, bytesOf(message), signature),
  ];
  expect(answers).toEqual([false, false, false, false]);
});

// RFC 8032 section 5.1.7: S must be below the group order L; S + L is the same number under another spelling.
test("refuses a signature whose S was raised by the group order", async () => {
  const [, key, message, signature] = published[1];
  const order = 2n ** 252n + 27742317777372353535851937790883648493n;
  const s = bytesOf(signature.slice(64)).reduceRight((sum, byte) => sum * 256n + BigInt(byte), 0n) + order;
  const raised = Array.from({ length: 32 }, (_, i) => Number((s >> BigInt(8 * i)) & 255n));
  const forged = signature.slice(0, 64) + raised.map((byte) => byte.toString(16).padStart(2, "0")).join("");
  expect(await isSignedBy(key, bytesOf(message), forged)).toBe(false);
  expect(isSignedByScript(key, bytesOf(message), forged)).toBe(false);
});

test("is not signed by a key that is no point of the curve", async () => {
  const [, , message, signature] = published[0];
  const noPoint = `02${"00".repeat(31)}`;
  expect(await isSignedBy(noPoint, bytesOf(message), signature)).toBe(false);
  expect(isSignedByScript(noPoint, bytesOf(message), signature)).toBe(false);
});

test("never lets the private key out", async () => {
  const { privateKey } = await newKeyPair();
  await expect(crypto.subtle.exportKey("pkcs8", privateKey)).rejects.toThrow();
  await expect(crypto.subtle.exportKey("jwk", privateKey)).rejects.toThrow();
});

test("writes a fingerprint in groups that people can compare", async () => {
  const { publicKey } = await newSigner();
  expect(fingerprint(publicKey)).toMatch(/^([0-9a-f]{4} ){15}[0-9a-f]{4}$/);
});
