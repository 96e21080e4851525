/** What a verifier says of a record: three things apart, since each may hold without the others. */
import type { Client, LogEntry, PartState, PublicKey } from "../log";
import type { BreachCode } from "./replay/rule";

export type Place =
  /** Offset in the text, in UTF-16 code units. */
  | { part: "file"; offset: number }
  | { part: "header" }
  | { part: "entry"; n: number }
  /** The signature of the head after entry n; 0 for the header's. */
  | { part: "signature"; n: number }
  /** What stands beside entry n; 0 beside the header. */
  | { part: "personal"; n: number }
  | { part: "summary" }
  | { part: "seal" };

/** What stands in the file is not what was sealed. */
const otherThanSealed = [
  "wrong-number",
  "altered-header",
  "altered-entry",
  "altered-link",
  "entries-missing",
  "altered-signature",
  "signatures-missing",
  "altered-summary",
] as const;

export const intactCodes = [
  "too-large",
  "not-utf8",
  "not-json",
  "newer-format",
  "wrong-shape",
  ...otherThanSealed,
  "altered-seal",
  "personal-differs",
  "not-canonical",
  "not-sealed",
] as const;
export type IntactCode = (typeof intactCodes)[number];

export type Fault<Code extends string> = { ok: false; code: Code; at: Place; expected: string; found: string };

export type Verdict = {
  /** The chain, its seal and every byte hold together. */
  intact: { ok: true; entries: number; sealed: boolean } | Fault<IntactCode>;
  /** The seal, or the heads of an unfinished record, are signed by the key that the header names. */
  signedBy:
    | {
        ok: true;
        key: PublicKey;
        fingerprint: string /** Among the keys given as trusted; null where none were given. */;
        trusted: boolean | null;
      }
    | Fault<"head-not-signed" | "seal-not-signed" | "not-checked">;
  /** Every time, count, gate and the summary come out the same when the facts are replayed. */
  follows: { ok: true } | Fault<BreachCode | "note-differs" | "unknown-rules" | "not-checked">;
  /** How many facts are known in which way; null where the record could not be read. */
  known: { measured: number; scanned: number; said: number } | null;
  /** What of its personal parts the file holds; null where it could not be read. "Erased" is the file's own word. */
  personal: { client: Client["state"]; notes: Readonly<Record<PartState, number>> } | null;
};

/** Said wherever a verdict is shown. */
export const whatItProves =
  "This proves what was said and measured, and by which key; never that things happened, nor when.";

/** Passed: intact, signed, following; and by a trusted key where trusted keys were given. */
export const passes = ({ intact, signedBy, follows }: Verdict): boolean =>
  intact.ok && signedBy.ok && signedBy.trusted !== false && follows.ok;

export const inWords = (place: Place): string => {
  if (place.part === "file") return `character ${place.offset}`;
  return "n" in place ? `${place.part} ${place.n}` : place.part;
};

/** Where the seal or the heads are signed by the key, but what stands in the file is not what was signed. */
export const sealedOtherwise = ({ intact, signedBy }: Verdict): boolean =>
  signedBy.ok && !intact.ok && otherThanSealed.some((code) => code === intact.code);

/** The fact that a place names: its code, and when by the wall clock of the station. Null where there is none. */
export function factAt(entries: readonly LogEntry[], place: Place): { type: string; clock: string } | null {
  const entry = place.part === "entry" ? entries.find(({ n }) => n === place.n) : undefined;
  return entry ? { type: entry.fact.type, clock: entry.at.slice(11, 19) } : null;
}

/** One line, whatever a hostile file holds. */
export const shortly = (text: string): string => {
  const line = text.replace(/\p{C}/gu, "?");
  return line.length > 160 ? `${line.slice(0, 160)}…` : line;
};
