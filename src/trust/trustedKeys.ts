/** The studio's list of devices that it trusts, each by its public key. Read as hostile, like any file. */
import { z } from "zod";
import { PublicKey } from "../log/header";
import { type Answer, answer, refuse } from "../sums/answer";

export const TrustedKey = z.strictObject({ name: z.string().min(1).max(60), key: PublicKey });
export const TrustedKeys = z.array(TrustedKey).max(200);
export type TrustedKey = z.infer<typeof TrustedKey>;

export type TrustTrouble = "key-wrong" | "key-known" | "name-missing" | "list-full";

/** A key as people copy it: spaces, colons and capitals do not matter. */
export const keyFrom = (typed: string): PublicKey | null => {
  const read = PublicKey.safeParse(typed.replace(/[\s:]/g, "").toLowerCase());
  return read.success ? read.data : null;
};

/** @returns the list with the device at its end. Pure. */
export function withKey(
  list: readonly TrustedKey[],
  name: string,
  typed: string,
): Answer<readonly TrustedKey[], TrustTrouble> {
  const key = keyFrom(typed);
  const called = name.trim().slice(0, 60);
  if (key === null) return refuse("key-wrong", "A key has 64 digits, 0 to 9 and a to f.");
  if (called === "") return refuse("name-missing", "Give the device a name.");
  if (list.some((one) => one.key === key)) return refuse("key-known", "This key is on the list.");
  if (list.length >= 200) return refuse("list-full", "The list holds 200 devices.");
  return answer([...list, { name: called, key }]);
}

export const withoutKey = (list: readonly TrustedKey[], key: PublicKey): readonly TrustedKey[] =>
  list.filter((one) => one.key !== key);
