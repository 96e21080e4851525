/**
 * The facts as a table, RFC 4180: one row a fact. Numbers of ours are left as they are. The record stays the evidence.
 */
import { csv } from "./csv";
import type { RecordFile } from "./recordFile";

const columns = ["n", "at", "monoMs", "life", "by", "confidence", "known", "fact", "witnessedMs", "cause"] as const;

/** @returns text in UTF-8 without a byte order mark; the last column holds what is particular to the fact, as JSON. */
export function factsCsv(record: Pick<RecordFile, "entries">): string {
  const rows = record.entries.map(({ n, at, monoMs, life, way, known, fact }) => {
    const { type, witnessedMs, cause, ...particulars } = fact;
    const confidence = way.by === "voice" ? way.confidence : "";
    return [n, at, monoMs, life, way.by, confidence, known, type, witnessedMs, cause, JSON.stringify(particulars)];
  });
  return csv([[...columns, "particulars"], ...rows]);
}
