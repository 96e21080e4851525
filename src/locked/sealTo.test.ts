import { describe, expect, test } from "vitest";
import { bytesOf } from "../log/canonical";
import { ciphers, newOpeningPair, openSealed, privateBytes, privateFrom, sealTo } from "./sealTo";

const utf8 = new TextEncoder();
const [info, about] = [utf8.encode("records"), utf8.encode("session 1")];
const texts = [utf8.encode("who"), utf8.encode("what happened")];
const pair = await newOpeningPair();
const sealed = await sealTo(pair.publicKey, info, about, texts);
const read = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

test("what was sealed in a row opens, each at its place", async () => {
  expect(read(await openSealed(pair, info, about, sealed, 0))).toBe("who");
  expect(read(await openSealed(pair, info, about, sealed, 1))).toBe("what happened");
});

test("opens with the private half as it comes back from being locked away, and that one cannot be taken out again", async () => {
  const privateKey = await privateFrom(await privateBytes(pair));
  expect(read(await openSealed({ ...pair, privateKey }, info, about, sealed, 1))).toBe("what happened");
  await expect(privateBytes({ ...pair, privateKey })).rejects.toThrow();
});

describe("does not open", () => {
  const other = async () => ({ ...(await newOpeningPair()), publicKey: pair.publicKey });
  const swapped = { ...sealed, bodies: sealed.bodies.toReversed() };
  test.each([
    ["with another key", async () => openSealed(await other(), info, about, sealed, 0)],
    ["for another purpose", () => openSealed(pair, utf8.encode("backup"), about, sealed, 0)],
    ["as another session's", () => openSealed(pair, info, utf8.encode("session 2"), sealed, 0)],
    ["at another place of the row", () => openSealed(pair, info, about, swapped, 0)],
    ["with an agreement of zeros", () => openSealed(pair, info, about, { ...sealed, enc: new Uint8Array(65) }, 0)],
  ])("%s", async (_story, open) => {
    await expect(open()).rejects.toThrow();
  });
  test("with any byte changed", async () => {
    for (const [at, byte] of sealed.bodies[0]?.entries() ?? []) {
      const body = sealed.bodies[0]?.slice() ?? new Uint8Array(0);
      body[at] = byte ^ 1;
      await expect(openSealed(pair, info, about, { ...sealed, bodies: [body] }, 0)).rejects.toThrow();
    }
  });
});

test("seals the same text otherwise each time", async () => {
  const again = await sealTo(pair.publicKey, info, about, texts);
  expect(again.enc).not.toEqual(sealed.enc);
  expect(again.bodies[0]).not.toEqual(sealed.bodies[0]);
});

// RFC 9180 appendix A.3.1: DHKEM(P-256, HKDF-SHA256), HKDF-SHA256, AES-128-GCM, base mode, sequence numbers 0 and 1.
describe("RFC 9180 appendix A.3.1", () => {
  const hex = (text: string) => bytesOf(text);
  const publicKey = hex(
    "04fe8c19ce0905191ebc298a9245792531f26f0cece2460639e8bc39cb7f706a826a779b4cf969b8a0e539c7f62fb3d30ad6aa8f80e30f1d128aafd68a2ce72ea0",
  );
  const enc = hex(
    "04a92719c6195d5085104f469a8b9814d5838ff72b60501e2c4466e5e67b325ac98536d7b61a1af4b78e5b7f951c0900be863c403ce65c9bfcb9382657222d18c4",
  );
  const bodies = [
    hex("5ad590bb8baa577f8619db35a36311226a896e7342a6d836d8b7bcd2f20b6c7f9076ac232e3ab2523f39513434"),
    hex("fa6f037b47fc21826b610172ca9637e82d6e5801eb31cbd3748271affd4ecb06646e0329cbdf3c3cd655b28e82"),
  ];
  const plain = "4265617574792069732074727574682c20747275746820626561757479";

  test.each([
    [0, "436f756e742d30"],
    [1, "436f756e742d31"],
  ])("encryption %i opens to its plain text", async (place, aad) => {
    const b64 = (bytes: Uint8Array) => Buffer.from(bytes).toString("base64url");
    const jwk = { kty: "EC", crv: "P-256", x: b64(publicKey.slice(1, 33)), y: b64(publicKey.slice(33)) };
    const d = b64(hex("f3ce7fdae57e1a310d87f1ebbde6f328be0a99cdbcadf4d6589cf29de4b8ffd2"));
    const curve = { name: "ECDH", namedCurve: "P-256" };
    const privateKey = await crypto.subtle.importKey("jwk", { ...jwk, d }, curve, false, ["deriveBits"]);
    const greeting = hex("4f6465206f6e2061204772656369616e2055726e");
    const opened = await openSealed(
      { privateKey, publicKey },
      greeting,
      hex(aad),
      { enc, bodies },
      place,
      ciphers.aes128,
    );
    expect(Buffer.from(opened).toString("hex")).toBe(plain);
  });
});
