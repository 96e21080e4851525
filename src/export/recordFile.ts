/**
 * The record: one JSON file in the one form of RFC 8785, that holds the header, every entry, the signature of every head
 * and, once the session is finished, its summary and seal. `signatures[0]` is over the header's head. What is personal
 * stands beside all that: it may be left out or erased, and the rest holds as before.
 */
import { z } from "zod";
import { Closing, canonicalText, erased, Header, type KeptSession, LogEntry, PersonalPart, Signature } from "../log";

export const RecordFile = z.strictObject({
  header: Header,
  entries: z.array(LogEntry).max(100_000),
  signatures: z.array(Signature).min(1).max(100_001),
  /** Null while the session goes on. */
  closing: Closing.nullable(),
  /** What the chain has salted commitments to, in order; missing in format 1, and where it is not handed over. */
  personal: z.array(PersonalPart).max(1_000).optional(),
});
export type RecordFile = z.infer<typeof RecordFile>;

export const recordOf = ({ header, entries, signatures, closing, personal }: KeptSession): RecordFile => ({
  header,
  entries: [...entries],
  signatures: [...signatures],
  closing,
  ...(header.formatVersion === 1 ? {} : { personal: [...personal] }),
});

/** The same record to be handed over with nothing personal in it; it verifies, and says that this is not included. */
export function withoutPersonal(record: RecordFile): RecordFile {
  const { personal: _personal, ...rest } = record;
  return rest;
}

/** The same record after these personal parts were erased; what it does not hold is passed over. */
export const withErased = (record: RecordFile, places: readonly number[]): RecordFile =>
  record.personal
    ? { ...record, personal: record.personal.map((part) => (places.includes(part.n) ? erased(part.n) : part)) }
    : record;

/** The file's text, RFC 8785. */
export const recordText = (record: RecordFile): string => textOfParts(record, record.entries.map(canonicalText)).text;

/**
 * The same from entries already written out. Names stand in the order of RFC 8785: closing, entries, header, personal,
 * signatures.
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
  const beside = record.personal ? `,"personal":${canonicalText(record.personal)}` : "";
  const after = `],"header":${canonicalText(record.header)}${beside},"signatures":${canonicalText(record.signatures)}}`;
  const entriesEnd = Math.max(before.length, offset - 1);
  return { text: `${before}${entryTexts.join(",")}${after}`, entryStarts, entriesEnd };
}
