/** One byte of a record changed: where it stands, and whether a verdict points there. */
import { canonicalText, type PersonalPart } from "../../log";
import { type RecordFile, textOfParts } from "../recordFile";
import { type Place, passes, type Verdict } from "../verdict";

/** @returns what part of the record the byte at this offset belongs to. The text must be ASCII, as these samples are. */
export function partsOf(record: RecordFile): (offset: number) => Place {
  const texts = record.entries.map(canonicalText);
  const { text, entryStarts, entriesEnd } = textOfParts(record, texts);
  const listStart = text.indexOf(',"entries":[');
  const headerStart = text.indexOf(',"header":', entriesEnd);
  const personalStart = text.indexOf(',"personal":[', entriesEnd);
  const partStarts = startsOf(record.personal ?? [], personalStart + ',"personal":['.length);
  const signaturesStart = text.lastIndexOf(',"signatures":[');
  const firstSignature = signaturesStart + ',"signatures":['.length;
  return (offset) => {
    if (offset >= firstSignature) return { part: "signature", n: Math.floor((offset - firstSignature) / 131) };
    if (offset >= signaturesStart) return { part: "file", offset };
    const part = partStarts.findLast(({ start }) => start <= offset);
    if (part) return { part: "personal", n: part.n };
    if (personalStart >= 0 && offset >= personalStart) return { part: "file", offset };
    if (offset >= headerStart) return { part: "header" };
    const n = entryStarts.filter((start) => start <= offset).length;
    if (n > 0 && offset < entriesEnd) return { part: "entry", n };
    return n > 0 || offset >= listStart ? { part: "file", offset } : { part: "seal" };
  };
}

function startsOf(parts: readonly PersonalPart[], first: number) {
  let start = first;
  return parts.map((part) => {
    const here = { n: part.n, start };
    start += canonicalText(part).length + 1;
    return here;
  });
}

/** The place that the verdict names first. */
export const placeNamed = ({ intact, signedBy, follows }: Verdict): Place | null => {
  const fault = [intact, signedBy, follows].find((one) => !one.ok);
  return fault && !fault.ok ? fault.at : null;
};

/**
 * Found, and named where it is: in the same entry, header or signature. A byte between two entries may be told by either;
 * what breaks the frame of the file is told by the offset where it no longer reads.
 */
export function isPointedOut(verdict: Verdict, altered: Place, offset: number): boolean {
  const named = placeNamed(verdict);
  if (passes(verdict) || named === null) return false;
  if (named.part === "file") return altered.part !== "entry" && named.offset >= offset - 1;
  if (altered.part === "entry") return named.part === "entry" && (named.n === altered.n || named.n === altered.n + 1);
  if (altered.part === "seal") return named.part === "seal" || named.part === "summary";
  if (altered.part === "signature") return named.part === "signature" && named.n === altered.n;
  return named.part === altered.part || altered.part === "file";
}
