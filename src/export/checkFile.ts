/** A file that somebody hands over: a record, or a page that carries one. What it is, and what a verifier says of it. */
import { unpacked } from "../bundle/container";
import { walkChain } from "../log";
import { mostBytes, readRecord } from "./readRecord";
import type { RecordFile } from "./recordFile";
import type { Verdict } from "./verdict";
import { type VerifyOptions, verifyRecord } from "./verifyRecord";

/** The largest record in base64, and the program of its page. */
export const mostFileBytes = Math.ceil((mostBytes * 4) / 3) + 4_000_000;

export type CheckedFile =
  | {
      ok: true;
      verdict: Verdict;
      /** Null where it could not be read. `head` is what its chain comes to, whatever it says itself. */
      read: { record: RecordFile; text: string; head: string } | null;
    }
  | { ok: false; why: "tooLarge" | "noRecord" | "unreadable" };

/** @param bytes anything at all. Never throws. */
export async function checkFile(
  bytes: Uint8Array,
  options: Pick<VerifyOptions, "trusted" | "acceptUnfinished">,
): Promise<CheckedFile> {
  if (bytes.length > mostFileBytes) return { ok: false, why: "tooLarge" };
  const record = isPage(bytes) ? unpacked(new TextDecoder().decode(bytes)) : bytes;
  if (record === null) return { ok: false, why: "noRecord" };
  const verdict = await verifyRecord(record, options);
  const read = readRecord(record);
  if (!read.ok) return { ok: true, verdict, read: null };
  const head = walkChain(read.raw.header, read.raw.entries).heads.at(-1) ?? "";
  return { ok: true, verdict, read: { record: read.record, text: read.text, head } };
}

/** A record begins with a brace, a page with an angle. */
function isPage(bytes: Uint8Array): boolean {
  const start = new TextDecoder().decode(bytes.subarray(0, 200)).trimStart();
  return start.startsWith("<");
}
