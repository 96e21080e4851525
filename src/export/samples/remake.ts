/** What a forger does after changing entries: makes chain, signatures, summary and seal anew, with a key or without. */
import { headOf, headOfHeader, type LogEntry, makeClosing, newSigner, type Signer, signedMessage } from "../../log";
import type { RecordFile } from "../recordFile";
import { summaryBy } from "../replay/replay";

/** @param by Null where the forger has not the key: the old signatures stay, and the seal is by a key of their own. */
export async function remade(copy: RecordFile, by: Signer | null): Promise<RecordFile> {
  const sign = async (head: string, old: string | undefined) =>
    by ? by.sign(signedMessage("head", head)) : (old ?? "00".repeat(64));
  let head = headOfHeader(copy.header);
  const signatures = [await sign(head, copy.signatures[0])];
  const entries: LogEntry[] = [];
  for (const [i, entry] of copy.entries.entries()) {
    const linked = { ...entry, n: i + 1, prev: head };
    head = headOf(head, linked);
    entries.push(linked);
    signatures.push(await sign(head, copy.signatures[i + 1]));
  }
  const summary = summaryBy(copy.header.rules, copy.header.input, entries);
  const sealer = by ?? (await newSigner());
  const closing = await makeClosing({ entries, signatures, head }, summary, "2026-11-25T11:00:00.000+00:00", sealer);
  return { header: copy.header, entries, signatures, closing };
}
