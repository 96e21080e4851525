import { createDecipheriv, pbkdf2Sync } from "node:crypto";
import { describe, expect, test } from "vitest";
import { fromBase64, type Locked, lock, rounds, toBase64, unlock } from "./locked";

const passphrase = "nine green bottles";
const plain = new TextEncoder().encode("the artist's own");
const locked = async (work = 1000): Promise<Locked> => {
  const made = await lock("exposure-report", passphrase, plain, work);
  if (!made.ok) throw new Error(made.message);
  return made.locked;
};

test("opens with its passphrase and gives back every byte", async () => {
  const opened = await unlock("exposure-report", passphrase, JSON.parse(JSON.stringify(await locked())));
  expect(opened.ok && [...opened.bytes]).toEqual([...plain]);
});

test("opens with Node's own PBKDF2 and AES-GCM from nothing but what stands in the file", async () => {
  const { kdf, cipher, body, ...rest } = await locked();
  const key = pbkdf2Sync(passphrase, Buffer.from(kdf.salt, "base64"), kdf.rounds, 32, "sha256");
  const whole = Buffer.from(body, "base64");
  const opening = createDecipheriv("aes-256-gcm", key, Buffer.from(cipher.iv, "base64"));
  opening.setAuthTag(whole.subarray(-16));
  opening.setAAD(
    Buffer.from(
      `${rest.format}\n1\n${rest.purpose}\nPBKDF2-HMAC-SHA-256\n1000\n${kdf.salt}\nAES-256-GCM\n${cipher.iv}`,
    ),
  );
  expect(Buffer.concat([opening.update(whole.subarray(0, -16)), opening.final()]).toString()).toBe("the artist's own");
});

// RFC 7914 section 11: PBKDF2-HMAC-SHA-256 test vectors (passwd/salt/1 and Password/NaCl/80000), first 32 bytes.
test.each([
  ["passwd", "salt", 1, "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"],
  ["Password", "NaCl", 80_000, "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"],
])("derives the key of RFC 7914 section 11 for %s", async (secret, salt, work, key) => {
  const raw = await crypto.subtle.importKey("raw", new TextEncoder().encode(secret), "PBKDF2", false, ["deriveBits"]);
  const how = { name: "PBKDF2", hash: "SHA-256", salt: new TextEncoder().encode(salt), iterations: work };
  expect(Buffer.from(await crypto.subtle.deriveBits(how, raw, 256)).toString("hex")).toBe(key);
});

test("asks 600,000 rounds of whoever guesses", async () => {
  const made = await lock("backup", passphrase, plain);
  expect(made).toMatchObject({ ok: true, locked: { kdf: { rounds } } });
  expect(rounds).toBe(600_000);
});

test("never uses a salt or a nonce twice", async () => {
  const [one, two] = [await locked(), await locked()];
  expect(one.kdf.salt).not.toBe(two.kdf.salt);
  expect(one.cipher.iv).not.toBe(two.cipher.iv);
});

test("takes a passphrase typed in pieces or in one: é is é", async () => {
  const made = await lock("backup", "caf\u00e9 au lait", plain, 1000);
  if (!made.ok) throw new Error(made.message);
  expect(await unlock("backup", "cafe\u0301 au lait", made.locked)).toMatchObject({ ok: true });
});

describe("refuses", () => {
  test("a passphrase of seven letters", async () => {
    expect(await lock("backup", "seventy", plain)).toMatchObject({ code: "passphrase-short" });
  });
  test("another passphrase", async () => {
    expect(await unlock("exposure-report", "nine green bottle", await locked())).toMatchObject({
      code: "wrong-passphrase",
    });
  });
  test("what was locked for another purpose", async () => {
    expect(await unlock("backup", passphrase, await locked())).toMatchObject({ code: "other-purpose" });
  });
  test("a purpose or fewer rounds written over", async () => {
    const forged = { ...(await locked()), purpose: "backup" };
    expect(await unlock("backup", passphrase, forged)).toMatchObject({ code: "wrong-passphrase" });
    const file = await locked();
    const weaker = { ...file, kdf: { ...file.kdf, rounds: 1 } };
    expect(await unlock("exposure-report", passphrase, weaker)).toMatchObject({ code: "wrong-passphrase" });
  });
  test("any byte of the body changed", async () => {
    const file = await locked();
    const bytes = fromBase64(file.body);
    for (const [at, byte] of bytes.entries()) {
      const copy = bytes.slice();
      copy[at] = byte ^ 1;
      const opened = await unlock("exposure-report", passphrase, { ...file, body: toBase64(copy) });
      expect(opened).toMatchObject({ code: "wrong-passphrase" });
    }
  });
  test("work without end", async () => {
    const file = await locked();
    expect(
      await unlock("exposure-report", passphrase, { ...file, kdf: { ...file.kdf, rounds: 2 ** 40 } }),
    ).toMatchObject({ code: "not-a-lock" });
  });
  test.each([null, 7, "text", [], { format: "gloveside-locked" }])("%j, which is no lock", async (file) => {
    expect(await unlock("backup", passphrase, file)).toMatchObject({ code: "not-a-lock" });
  });
  test("a newer format, politely", async () => {
    expect(await unlock("backup", passphrase, { ...(await locked()), formatVersion: 2 })).toMatchObject({
      code: "newer-format",
    });
  });
});
