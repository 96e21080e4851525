/** The studio's list of devices that it trusts, each by its public key, as a file. Read as hostile, like any file. */
import { z } from "zod";
import { PublicKey } from "../log/header";
import { type Answer, answer, refuse } from "../sums/answer";

export const TrustedKey = z.strictObject({ key: PublicKey, name: z.string().min(1).max(80) });
export type TrustedKey = z.infer<typeof TrustedKey>;

const TrustedList = z.strictObject({
  format: z.literal("gloveside-trusted"),
  formatVersion: z.literal(1),
  keys: z.array(TrustedKey).max(200),
});

/** A key as people copy it: spaces, colons and capitals do not matter. */
export const keyFrom = (typed: string): PublicKey | null => {
  const read = PublicKey.safeParse(typed.replace(/[\s:]/g, "").toLowerCase());
  return read.success ? read.data : null;
};

export const listText = (keys: readonly TrustedKey[]): string =>
  `${JSON.stringify({ format: "gloveside-trusted", formatVersion: 1, keys }, null, 2)}\n`;

/** @param text of a file from anywhere. Never throws. */
export function readList(text: string): Answer<readonly TrustedKey[], "not-a-list"> {
  try {
    const read = TrustedList.safeParse(JSON.parse(text));
    if (read.success) return answer(read.data.keys);
  } catch {
    // Said below, as for any other file.
  }
  return refuse("not-a-list", "This is not a list of trusted keys saved by the app.");
}

/** The list as it is handed over: this device first, by the name that the list has for it already, or by this one. */
export const withOwn = (keys: readonly TrustedKey[], own: TrustedKey): readonly TrustedKey[] => [
  keys.find(({ key }) => key === own.key) ?? own,
  ...keys.filter(({ key }) => key !== own.key),
];

/** What a list that is taken in would add: each key once, and neither what is trusted already nor this device's own. */
export const newOn = (
  list: readonly TrustedKey[],
  trusted: readonly TrustedKey[],
  ownKey: PublicKey | null,
): readonly TrustedKey[] => {
  const known = new Set([...trusted.map(({ key }) => key), ownKey]);
  return list.filter(({ key }) => {
    const isNew = !known.has(key);
    known.add(key);
    return isNew;
  });
};
