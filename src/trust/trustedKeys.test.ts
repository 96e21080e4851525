import { expect, test } from "vitest";
import { fingerprint } from "../log/signing";
import { keyFrom, listText, readList } from "./trustedKeys";

const key = "0123456789abcdef".repeat(4);

test("takes a key as its fingerprint is shown, capitals and all", () => {
  expect(keyFrom(fingerprint(key).toUpperCase())).toBe(key);
});

test.each([
  ["63 digits", key.slice(1)],
  ["a letter past f", `g${key.slice(1)}`],
  ["nothing", ""],
])("takes no key from %s", (_story, typed) => {
  expect(keyFrom(typed)).toBeNull();
});

test("a list reads back as it was saved", () => {
  const keys = [{ key, name: "Tablet" }];
  expect(readList(listText(keys))).toEqual({ ok: true, value: keys });
});

test.each([
  ["an altered entry", listText([{ key, name: "Tablet" }]).replace('"name"', '"admin"')],
  ["a newer format", listText([]).replace('"formatVersion": 1', '"formatVersion": 2')],
  ["a prototype in place of a list", '{"__proto__":{"keys":[]},"format":"gloveside-trusted","formatVersion":1}'],
  ["no JSON", "Tablet"],
  ["nothing", ""],
])("does not believe %s", (_story, text) => {
  expect(readList(text)).toMatchObject({ ok: false, code: "not-a-list" });
});
