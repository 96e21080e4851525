import { fc, test as property } from "@fast-check/vitest";
import canonicalize from "canonicalize";
import { describe, expect, test } from "vitest";
import { bytesOf, canonicalText, digestOf, hexOf, prefixedDigest, prefixes } from "./canonical";

const utf8 = (text: string) => new TextEncoder().encode(text);

describe("SHA-256", () => {
  // FIPS 180-4; the NIST example messages for SHA-256.
  test.each([
    ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
    [
      "abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu",
      "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1",
    ],
    ["a".repeat(1_000_000), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"],
  ])("gives the FIPS 180-4 digest of example %#", (message, digest) => {
    expect(digestOf(utf8(message))).toBe(digest);
  });

  // RFC 6962 section 2.1: the leaf hash of an empty entry is SHA-256(0x00).
  test("puts the prefix byte in front, as RFC 6962 does for a leaf", () => {
    expect(prefixedDigest(0x00, null, "")).toBe("6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d");
  });

  property.prop([fc.string(), fc.uint8Array({ minLength: 32, maxLength: 32 })])(
    "agrees with WebCrypto over prefix, previous digest and text",
    async (text, previous) => {
      const whole = new Uint8Array([prefixes.entry, ...previous, ...utf8(text)]);
      const theirs = hexOf(new Uint8Array(await crypto.subtle.digest("SHA-256", whole)));
      expect(prefixedDigest(prefixes.entry, hexOf(previous), text)).toBe(theirs);
      expect(bytesOf(hexOf(previous))).toEqual(previous);
    },
  );
});

describe("RFC 8785", () => {
  test("writes the sample of section 3.2.2", () => {
    const sample = JSON.parse(String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`);
    const text = canonicalText(sample);
    expect(text).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
    expect(utf8(text).length).toBe(118);
    expect(digestOf(utf8(text))).toBe("2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb");
  });

  test("sorts names by UTF-16 code units, as section 3.2.3 does", () => {
    const sample = JSON.parse(String.raw`{
      "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
    }`);
    expect([...canonicalText(sample).matchAll(/:"([^"]*)"/g)].map((match) => match[1])).toEqual([
      "Carriage Return",
      "One",
      "Control",
      "Latin Small Letter O With Diaeresis",
      "Euro Sign",
      "Emoji: Grinning Face",
      "Hebrew Letter Dalet With Dagesh",
    ]);
  });

  // RFC 8785 Appendix B, number serialisation samples.
  test.each([
    ["0000000000000000", "0"],
    ["8000000000000000", "0"],
    ["0000000000000001", "5e-324"],
    ["8000000000000001", "-5e-324"],
    ["7fefffffffffffff", "1.7976931348623157e+308"],
    ["ffefffffffffffff", "-1.7976931348623157e+308"],
    ["4340000000000000", "9007199254740992"],
    ["c340000000000000", "-9007199254740992"],
    ["4430000000000000", "295147905179352830000"],
    ["44b52d02c7e14af5", "9.999999999999997e+22"],
    ["44b52d02c7e14af6", "1e+23"],
    ["44b52d02c7e14af7", "1.0000000000000001e+23"],
    ["444b1ae4d6e2ef4e", "999999999999999700000"],
    ["444b1ae4d6e2ef4f", "999999999999999900000"],
    ["444b1ae4d6e2ef50", "1e+21"],
    ["3eb0c6f7a0b5ed8c", "9.999999999999997e-7"],
    ["3eb0c6f7a0b5ed8d", "0.000001"],
    ["41b3de4355555553", "333333333.3333332"],
    ["41b3de4355555554", "333333333.33333325"],
    ["41b3de4355555555", "333333333.3333333"],
    ["41b3de4355555556", "333333333.3333334"],
    ["41b3de4355555557", "333333333.33333343"],
    ["becbf647612f3696", "-0.0000033333333333333333"],
    ["43143ff3c1cb0959", "1424953923781206.2"],
  ])("writes the double %s of Appendix B as %s", (hex, text) => {
    expect(canonicalText(new DataView(bytesOf(hex).buffer).getFloat64(0))).toBe(text);
  });

  test.each([["7fffffffffffffff"], ["7ff0000000000000"]])(
    "refuses %s, not a number or infinite (Appendix B)",
    (hex) => {
      expect(() => canonicalText(new DataView(bytesOf(hex).buffer).getFloat64(0))).toThrow();
    },
  );

  test("refuses a lone surrogate (section 3.2.2.2)", () => {
    expect(() => canonicalText({ note: "\ud800" })).toThrow();
  });

  property.prop([fc.jsonValue()])("writes one text for one value, whatever the order of its names", (value) => {
    const text = canonicalText(value);
    expect(canonicalText(reversed(JSON.parse(text)))).toBe(text);
  });
});

property.prop([fc.jsonValue()])("is one text with the reference writer, whatever order the names come in", (value) => {
  const text = canonicalize(value) ?? "";
  expect(canonicalText(value)).toBe(text);
  expect(canonicalText(JSON.parse(text))).toBe(text);
});

test.each([["\\ud800"], ["a\\udfffb"]])(
  "refuses the lone surrogate %s in a value whose names are in order",
  (spelt) => {
    expect(() => canonicalText(JSON.parse(`{"a":1,"b":"${spelt}"}`))).toThrow();
  },
);

test("writes a backslash before the letters ud as the text that it is", () => {
  expect(canonicalText({ a: "\\ud800" })).toBe('{"a":"\\\\ud800"}');
});

const reversed = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(reversed);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([name, inside]) => [name, reversed(inside)]),
  );
};
