/** What a code held up means for the session: a lot to be read back, or why it is not taken. Pure. */
import type { SessionEvent } from "../../machines/session/vocabulary";
import { readPackCode, type Seen } from "./packCode";

type FromCode = Extract<SessionEvent, { type: "lot.shown" | "code.refused" }>;

/** @param currentYear four digits, at the station. */
export function asEvent(seen: Seen, currentYear: number): FromCode {
  const read = readPackCode(seen, currentYear);
  if (!read.ok) return { type: "code.refused", why: "codeUnreadable" };
  const { lot, expiry, warnings } = read.pack;
  // A lot that may have swallowed the expiry would read as one that never runs out.
  if (warnings.includes("separator-may-be-missing")) return { type: "code.refused", why: "codeUnsure" };
  return lot === null ? { type: "code.refused", why: "codeWithoutLot" } : { type: "lot.shown", lot, expiry };
}
