import { expect, test } from "vitest";
import { fingerprint } from "../log/signing";
import { keyFrom, listText, newOn, readList, withOwn } from "./trustedKeys";

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

const other = "fedcba9876543210".repeat(4);

test("the list that is handed over begins with the device's own key, under the name it has on the list", () => {
  const own = { key, name: "Device 0123" };
  expect(withOwn([{ key: other, name: "Tablet" }], own)).toEqual([own, { key: other, name: "Tablet" }]);
  const named = { key, name: "Station 1" };
  expect(withOwn([{ key: other, name: "Tablet" }, named], own)).toEqual([named, { key: other, name: "Tablet" }]);
});

test("a list that is taken in adds each new key once, and never the device's own", () => {
  const list = [
    { key, name: "Station 1" },
    { key: other, name: "Tablet" },
    { key: other, name: "Tablet again" },
  ];
  expect(newOn(list, [], key)).toEqual([{ key: other, name: "Tablet" }]);
  expect(newOn(list, [{ key: other, name: "Tablet" }], null)).toEqual([{ key, name: "Station 1" }]);
});
