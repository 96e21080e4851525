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
