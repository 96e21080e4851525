import { createHash } from "node:crypto";
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { commitmentTo, isWhatWasCommitted, newSalt } from "./commitment";

const anyBytes = fc.uint8Array({ maxLength: 200 });

describe("a salted commitment", () => {
  property.prop([anyBytes])("is the SHA-256 that Node's OpenSSL gives of kind, salt and content", (content) => {
    const salt = newSalt();
    const expected = createHash("sha256").update("gloveside-commitment/1\0").update(salt).update(content).digest("hex");
    expect(commitmentTo(content, salt)).toBe(expected);
  });

  property.prop([anyBytes, fc.nat(), fc.integer({ min: 1, max: 255 })])(
    "is opened by its content and salt, and by nothing that differs in a byte",
    (content, at, flip) => {
      const salt = newSalt();
      const commitment = commitmentTo(content, salt);
      expect(isWhatWasCommitted(commitment, content, salt)).toBe(true);
      const otherSalt = salt.map((byte, n) => (n === at % 32 ? byte ^ flip : byte));
      expect(isWhatWasCommitted(commitment, content, otherSalt)).toBe(false);
      expect(isWhatWasCommitted(commitment, Uint8Array.of(...content, flip), salt)).toBe(false);
    },
  );

  test("of the same content differs each time: it cannot be found by trying", () => {
    const content = new TextEncoder().encode("yes");
    expect(commitmentTo(content, newSalt())).not.toBe(commitmentTo(content, newSalt()));
  });

  test("refuses a short salt", () => {
    expect(() => commitmentTo(new Uint8Array(1), new Uint8Array(16))).toThrow(RangeError);
    expect(isWhatWasCommitted("0".repeat(64), new Uint8Array(1), new Uint8Array(0))).toBe(false);
  });
});
