/** Closes a session's log: adds it up, seals it with the device's key, keeps the seal, and hands the record over. */
import { type Journal, type JournalTrouble, makeClosing, type Signer, type WallTime, type Writer } from "../log";
import { type RecordFile, recordOf, recordText } from "./recordFile";
import { summaryBy } from "./replay/replay";

export type SealedRecord = { ok: true; record: RecordFile; text: string } | JournalTrouble;

/**
 * @param sealedAt Wall time, for the reader; it proves nothing.
 * @returns the record when its seal is on disk. A session that is sealed already gives the same record again.
 */
export async function sealRecord(
  journal: Journal,
  writer: Writer,
  signer: Signer,
  sealedAt: WallTime,
): Promise<SealedRecord> {
  const read = await journal.read(writer.session);
  if (!read.ok) return read;
  const { kept } = read;
  if (kept.closing) return handedOver(recordOf(kept));
  if (kept.entries.length === 0)
    return { ok: false, code: "not-a-fact", message: "A session without facts has no record." };
  try {
    const { rules, input } = kept.header;
    const closing = await makeClosing(kept, summaryBy(rules, input, kept.entries), sealedAt, signer);
    const finished = await writer.finish(closing);
    return finished.ok ? handedOver(recordOf({ ...kept, closing })) : finished;
  } catch {
    return { ok: false, code: "key-lost", message: "The key of this device does not sign." };
  }
}

const handedOver = (record: RecordFile): SealedRecord => ({ ok: true, record, text: recordText(record) });
