/**
 * The verdict on one record with one byte changed, without reading all the rest again: what stands before the altered fact
 * is the same, so the walk along the chain goes on from there. Judged by the verifier's own code; where the change reaches
 * further than one fact or one signature, the whole file is read.
 */
import { LogEntry, Signature, walkChain } from "../../log";
import { type RecordFile, textOfParts } from "../recordFile";
import type { Verdict } from "../verdict";
import { judge, type VerifyOptions, verifyRecord } from "../verifyRecord";

/** @param record sealed and whole, all ASCII. */
export function altering(record: RecordFile, options: VerifyOptions) {
  const chain = walkChain(record.header, record.entries);
  const { text, entryStarts, entriesEnd } = textOfParts(record, chain.texts);
  const raw: RecordFile = JSON.parse(text);
  const signaturesStart = text.lastIndexOf(',"signatures":[') + ',"signatures":['.length;
  /** Each with its quotes and the comma behind it. */
  const signatureLength = 131;

  /** What stands in the file from here to there, parsed; undefined where it is no longer one value of its own. */
  const valueAt = (changed: string, from: number, length: number): unknown => {
    try {
      return JSON.parse(changed.slice(from, from + length));
    } catch {
      return undefined;
    }
  };

  function ofEntry(changed: string, at: number): Promise<Verdict> | null {
    const i = entryStarts.findLastIndex((start) => start <= at);
    const [start, length] = [entryStarts[i] ?? 0, chain.texts[i]?.length ?? 0];
    if (i < 0 || at >= start + length || at >= entriesEnd) return null;
    const value = valueAt(changed, start, length);
    const read = LogEntry.safeParse(value);
    if (!read.success || changed.slice(start, start + length).includes("\\ud")) return null;
    const entries = { raw: raw.entries.with(i, value as LogEntry), read: record.entries.with(i, read.data) };
    const walked = walkChain(raw.header, entries.raw, {
      heads: chain.heads.slice(0, i + 1),
      texts: chain.texts.slice(0, i),
    });
    const whole = {
      record: { ...record, entries: entries.read },
      raw: { ...raw, entries: entries.raw },
      text: changed,
    };
    return judge(whole, walked, options);
  }

  function ofSignature(changed: string, at: number): Promise<Verdict> | null {
    const i = Math.floor((at - signaturesStart) / signatureLength);
    const start = signaturesStart + i * signatureLength;
    if (at < signaturesStart || i >= record.signatures.length || at >= start + signatureLength - 1) return null;
    const read = Signature.safeParse(valueAt(changed, start, signatureLength - 1));
    if (!read.success) return null;
    const signatures = record.signatures.with(i, read.data);
    return judge({ record: { ...record, signatures }, raw: { ...raw, signatures }, text: changed }, chain, options);
  }

  /** @param changed the record's text with the character at this offset exchanged for another. */
  return (changed: string, at: number): Promise<Verdict> =>
    ofEntry(changed, at) ?? ofSignature(changed, at) ?? verifyRecord(changed, options);
}
