import { expect, test } from "vitest";
import { fingerprint } from "../log/signing";
import { TrustedKeys, withKey, withoutKey } from "./trustedKeys";

const key = "0123456789abcdef".repeat(4);

test("takes a key as its fingerprint is shown, capitals and all", () => {
  expect(withKey([], " Tablet ", fingerprint(key).toUpperCase())).toEqual({
    ok: true,
    value: [{ name: "Tablet", key }],
  });
});

test.each([
  ["63 digits", "Tablet", key.slice(1), "key-wrong"],
  ["a letter past f", "Tablet", `g${key.slice(1)}`, "key-wrong"],
  ["no name", "  ", key, "name-missing"],
])("refuses %s", (_story, name, typed, code) => {
  expect(withKey([], name, typed)).toMatchObject({ ok: false, code });
});

test("refuses a key twice, and lets it go again", () => {
  const list = [{ name: "Tablet", key }];
  expect(withKey(list, "Phone", key)).toMatchObject({ code: "key-known" });
  expect(withoutKey(list, key)).toEqual([]);
});

test("does not believe a list that was altered on the disk", () => {
  expect(TrustedKeys.safeParse([{ name: "Tablet", key, admin: true }]).success).toBe(false);
});
