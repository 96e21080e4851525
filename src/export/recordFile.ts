/**
 * The record: one JSON file in the one form of RFC 8785, that holds the header, every entry, the signature of every head
 * and, once the session is finished, its summary and seal. `signatures[0]` is over the header's head.
 */
import { z } from "zod";
import { Closing, canonicalText, Header, type KeptSession, LogEntry, Signature } from "../log";

export const RecordFile = z.strictObject({
  header: Header,
  entries: z.array(LogEntry).max(100_000),
  signatures: z.array(Signature).min(1).max(100_001),
  /** Null while the session goes on. */
  closing: Closing.nullable(),
});
export type RecordFile = z.infer<typeof RecordFile>;

export const recordOf = ({ header, entries, signatures, closing }: KeptSession): RecordFile => ({
  header,
  entries: [...entries],
  signatures: [...signatures],
  closing,
});

/** The file's text, RFC 8785. */
export const recordText = (record: RecordFile): string => textOfParts(record, record.entries.map(canonicalText)).text;

/**
 * The same from entries already written out. Names stand in the order of RFC 8785: closing, entries, header, signatures.
 * `entryStarts[i]` is the offset of entry i + 1, `entriesEnd` that of the bracket behind the last.
 */
export function textOfParts(record: Omit<RecordFile, "entries">, entryTexts: readonly string[]) {
  const before = `{"closing":${canonicalText(record.closing)},"entries":[`;
  let offset = before.length;
  const entryStarts = entryTexts.map((text) => {
    const start = offset;
    offset += text.length + 1;
    return start;
  });
  const after = `],"header":${canonicalText(record.header)},"signatures":${canonicalText(record.signatures)}}`;
  const entriesEnd = Math.max(before.length, offset - 1);
  return { text: `${before}${entryTexts.join(",")}${after}`, entryStarts, entriesEnd };
}
