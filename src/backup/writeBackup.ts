/** Everything this device keeps as one locked file. One session is in memory at a time; the file grows piece by piece. */

import { recordOf } from "../export/recordFile";
import type { Journal } from "../log";
import type { Vault } from "../log/vault";
import type { Change } from "../studio/kinds";
import { BackupTrouble, locking } from "./container";
import type { Counts, Line } from "./lines";
import { packed } from "./packing";
import { asBackupTrouble, type BackupRefused } from "./trouble";

export interface BackupSources {
  readonly journal: Journal;
  /** Where records lie under their lock, a backup would lack them: then none is made. */
  readonly vault?: Pick<Vault, "state"> | null;
  readonly rows: () => Promise<readonly Change[]>;
  readonly protocols: () => readonly string[];
}

/** How far it has come: sessions done, of how many. */
export type Progress = (done: number, of: number) => void;

export type WrittenBackup =
  | {
      readonly ok: true;
      readonly file: Blob;
      readonly counts: Counts;
      /** Sessions that do not hold together on this device any more; they are not in the file. */
      readonly damaged: readonly string[];
    }
  | BackupRefused;

const locked = new BackupTrouble("records-locked", "The records are locked. Unlock them first. Nothing was made.");
const typeOfFile = "application/octet-stream";
/** Parts are handed to the browser, which may keep them on the disk, before there are many of them. */
const mostParts = 16;

export async function writeBackup(
  { journal, vault, rows, protocols }: BackupSources,
  passphrase: string,
  progress: Progress = () => undefined,
  work?: number,
): Promise<WrittenBackup> {
  const damaged: string[] = [];
  let counts: Counts = { sessions: 0, rows: 0, protocols: 0 };

  async function* lines(): AsyncGenerator<string> {
    if ((await vault?.state())?.unread) throw locked;
    const listed = await journal.all();
    if (!listed.ok) throw new BackupTrouble("damaged", listed.message);
    const sessions = listed.sessions.toReversed();
    let kept = 0;
    for (const [at, { session }] of sessions.entries()) {
      const read = await journal.read(session);
      if (read.ok) {
        kept += 1;
        yield write({ kind: "session", record: recordOf(read.kept) });
      } else if (read.code === "records-locked") throw locked;
      else damaged.push(session);
      progress(at + 1, sessions.length);
    }
    const studio = await rows();
    for (const { kind, id, value } of studio) yield write({ kind: "row", row: { kind, id, value } });
    const texts = protocols();
    for (const text of texts) yield write({ kind: "protocol", text });
    counts = { sessions: kept, rows: studio.length, protocols: texts.length };
    yield write({ kind: "end", ...counts });
  }

  try {
    let file = new Blob([], { type: typeOfFile });
    let parts: BlobPart[] = [];
    for await (const part of locking(packed(lines()), passphrase, work)) {
      parts.push(part);
      if (parts.length < mostParts) continue;
      file = new Blob([file, ...parts], { type: typeOfFile });
      parts = [];
    }
    return { ok: true, file: new Blob([file, ...parts], { type: typeOfFile }), counts, damaged };
  } catch (error) {
    return asBackupTrouble(error);
  }
}

const write = (line: Line): string => JSON.stringify(line);
