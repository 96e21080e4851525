/**
 * The facts as a table, RFC 4180: one row a fact, CRLF, quotes doubled. A cell that a spreadsheet would take for a
 * formula gets an apostrophe in front; numbers of ours are left as they are. The record stays the evidence.
 */
import type { RecordFile } from "./recordFile";

const columns = ["n", "at", "monoMs", "life", "by", "confidence", "known", "fact", "witnessedMs", "cause"] as const;

/** @returns text in UTF-8 without a byte order mark; the last column holds what is particular to the fact, as JSON. */
export function factsCsv(record: Pick<RecordFile, "entries">): string {
  const rows = record.entries.map(({ n, at, monoMs, life, way, known, fact }) => {
    const { type, witnessedMs, cause, ...particulars } = fact;
    const confidence = way.by === "voice" ? way.confidence : "";
    return [n, at, monoMs, life, way.by, confidence, known, type, witnessedMs, cause, JSON.stringify(particulars)];
  });
  return [[...columns, "particulars"], ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}

/** What opens a formula in common spreadsheets: = + - @, tab and carriage return (common practice, no source). */
const opensFormula = /^[=+\-@\t\r]/;

/** One cell by RFC 4180 section 2, rules 5 to 7. */
export function cell(value: string | number): string {
  if (typeof value === "number") return String(value);
  const inert = opensFormula.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
