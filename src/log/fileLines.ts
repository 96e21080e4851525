/** The lines of a session's file: the header, then one line a batch, then the closing. */
import type { KeptSession } from "./journal";

export type Lines = {
  header: { header: KeptSession["header"]; signature: string; head: string };
  batch: { entries: KeptSession["entries"]; signatures: string[]; head: string };
  closing: { closing: KeptSession["closing"] };
};
type AnyLine = Partial<Lines["header"] & Lines["batch"] & Lines["closing"]>;

const lineFeed = 10;

/**
 * Puts the whole lines of a file together. What stands after the last line feed was cut off and never acknowledged.
 * @returns what is kept, not yet believed, and the byte where the last whole line ends. Throws SyntaxError.
 */
export function readLines(file: Buffer) {
  const value = {
    header: undefined as KeptSession["header"] | undefined,
    entries: [] as KeptSession["entries"][number][],
    signatures: [] as string[],
    head: "",
    closing: null as KeptSession["closing"],
  };
  let bytes = 0;
  for (let end = file.indexOf(lineFeed); end >= 0; end = file.indexOf(lineFeed, bytes)) {
    const line = JSON.parse(file.toString("utf8", bytes, end)) as AnyLine;
    if (line.header) value.header = line.header;
    if (line.signature) value.signatures.push(line.signature);
    if (line.entries) value.entries.push(...line.entries);
    if (line.signatures) value.signatures.push(...line.signatures);
    if (line.head) value.head = line.head;
    if (line.closing) value.closing = line.closing;
    bytes = end + 1;
  }
  return { value, bytes };
}
