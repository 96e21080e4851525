/**
 * Restores a backup: read and verified whole into a place of its own first, and only then moved over, in one transaction.
 * What is here already stays as it is. A kill at any moment leaves all of it or nothing; `settle` finishes or clears.
 */

import type { IDBPTransaction } from "idb";
import type { RecordFile } from "../export/recordFile";
import { type Closing, clientIn, walkChain } from "../log";
import { rowFrom } from "../log/findingRow";
import { type LogDb, type LogSchema, logDatabase, type StoredSession } from "../log/logDatabase";
import type { Vault } from "../log/vault";
import type { Change } from "../studio/kinds";
import { BackupTrouble } from "./container";
import type { Counts } from "./lines";
import { readBackup, type Verified } from "./readBackup";
import { asBackupTrouble, type BackupRefused } from "./trouble";
import type { Progress } from "./writeBackup";

/** Keeps what is not the log's: rows and protocols that are not here yet. Told again after a kill, it does no harm. */
export type KeepOthers = (rows: readonly Change[], protocols: readonly string[]) => Promise<void>;

export type Restored =
  | {
      readonly ok: true;
      /** What the file held, and how many sessions of it were here already. */
      readonly counts: Counts;
      readonly alreadyHere: number;
    }
  | BackupRefused;

/** From here on the restore has happened; what is left is to hand rows and protocols over. */
type Staged = Verified | { readonly kind: "moved" };
const moved = ["staged", "sessions", "entries", "finding", "personal", "away", "left"] as const;
type Moving = IDBPTransaction<LogSchema, typeof moved, "readwrite">;

export async function restore(
  file: Blob,
  passphrase: string,
  keepOthers: KeepOthers,
  progress: Progress = () => undefined,
  name?: string,
  vault?: Vault,
): Promise<Restored> {
  const { open } = logDatabase(name);
  try {
    const db = await open();
    if ((await vault?.state())?.unread) throw locked;
    await settled(db, keepOthers);
    const counts = { sessions: 0, rows: 0, protocols: 0 };
    for await (const one of readBackup(file, passphrase)) {
      await db.add("staged", one);
      counts[one.kind === "session" ? "sessions" : one.kind === "row" ? "rows" : "protocols"] += 1;
      progress(counts.sessions, 0);
    }
    const alreadyHere = await moveOver(db, await knownAway(db, vault));
    await settled(db, keepOthers);
    await vault?.tidy();
    return { ok: true, counts, alreadyHere };
  } catch (error) {
    await open()
      .then((db) => settled(db, keepOthers))
      .catch(() => undefined);
    return asBackupTrouble(error);
  }
}

/** At the beginning of the app: a restore that was moved over is finished, one that was not leaves nothing. */
export async function settle(keepOthers: KeepOthers, name?: string): Promise<void> {
  await settled(await logDatabase(name).open(), keepOthers);
}

async function settled(db: LogDb, keepOthers: KeepOthers): Promise<void> {
  const rows: Change[] = [];
  const protocols: string[] = [];
  let hasMoved = false;
  let cursor = await db.transaction("staged").store.openCursor();
  while (cursor) {
    const one = cursor.value as Staged;
    if (one.kind === "moved") hasMoved = true;
    if (one.kind === "row") rows.push(one.row);
    if (one.kind === "protocol") protocols.push(one.text);
    cursor = await cursor.continue();
  }
  if (hasMoved) await keepOthers(rows, protocols);
  await db.clear("staged");
}

const locked = new BackupTrouble("records-locked", "The records are locked. Unlock them first. Nothing was changed.");

/** A session under the lock, as far as it must be known to tell whether the file holds the same. */
type Known = { readonly heads: readonly string[]; readonly closing: Closing | null };

/** Opened before the transaction begins, which would not wait for it. */
async function knownAway(db: LogDb, vault: Vault | undefined): Promise<ReadonlyMap<string, Known>> {
  const known = new Map<string, Known>();
  if (!vault) return known;
  const away = new Set<string>(await db.getAllKeys("away"));
  let cursor = await db.transaction("staged").store.openCursor();
  const asked: string[] = [];
  while (cursor) {
    const one = cursor.value as Staged;
    if (one.kind === "session" && away.has(one.record.header.session)) asked.push(one.record.header.session);
    cursor = await cursor.continue();
  }
  for (const session of asked) {
    const whole = await vault.whole(session);
    if (whole === null || whole === "locked") throw locked;
    const { row, rest } = whole;
    const { heads } = walkChain(
      row.header,
      rest.entries.map(({ entry }) => entry),
    );
    known.set(session, { heads, closing: row.closing });
  }
  return known;
}

async function moveOver(db: LogDb, away: ReadonlyMap<string, Known>): Promise<number> {
  const tx: Moving = db.transaction(moved, "readwrite", { durability: "strict" });
  tx.done.catch(() => undefined);
  try {
    const alreadyHere = await moveSessions(tx, away);
    // What stations were left with is read anew: an older session may have come in.
    await tx.objectStore("left").clear();
    await tx.objectStore("staged").add({ kind: "moved" } satisfies Staged);
    await tx.done;
    return alreadyHere;
  } catch (error) {
    const cause = tx.error ?? error;
    try {
      tx.abort();
    } catch {
      // It had ended by itself.
    }
    throw cause;
  }
}

async function moveSessions(tx: Moving, away: ReadonlyMap<string, Known>): Promise<number> {
  let alreadyHere = 0;
  // Restored sessions stand before all that this device has lived through itself, in their own order.
  let order = await oldestOrder(tx);
  let cursor = await tx.objectStore("staged").openCursor(null, "prev");
  while (cursor) {
    const one = cursor.value as Staged;
    if (one.kind === "session") {
      if (await isHere(tx, one.record, away)) alreadyHere += 1;
      else {
        order -= 1;
        await put(tx, one.record, order);
      }
      await cursor.delete();
    }
    cursor = await cursor.continue();
  }
  return alreadyHere;
}

async function oldestOrder(tx: Moving): Promise<number> {
  const oldest = await tx.objectStore("sessions").index("order").openKeyCursor();
  const oldestAway = await tx.objectStore("away").index("order").openKeyCursor();
  return Math.min(1, oldest?.key ?? 1, oldestAway?.key ?? 1);
}

/** The same, or more of the same. Another one under this number is refused, and with it the whole restore. */
async function isHere(
  tx: Moving,
  { header, entries, closing }: RecordFile,
  away: ReadonlyMap<string, Known>,
): Promise<boolean> {
  const here = away.get(header.session) ?? (await lyingOpen(tx, header.session));
  if (!here) return false;
  const heads = walkChain(header, entries).heads;
  const isBegun = heads.every((head, n) => here.heads[n] === head);
  const sameSeal = closing === null || JSON.stringify(closing) === JSON.stringify(here.closing);
  if (isBegun && sameSeal) return true;
  throw new BackupTrouble(
    "other-record",
    `Session ${header.session} is here with other contents. Nothing was taken from it.`,
  );
}

async function lyingOpen(tx: Moving, session: string): Promise<Known | null> {
  const here = await tx.objectStore("sessions").get(session);
  if (!here) return null;
  const kept = await tx.objectStore("entries").getAll(entriesOf(session));
  const { heads } = walkChain(
    here.header,
    kept.map(({ entry }) => entry),
  );
  return { heads, closing: here.closing };
}

const entriesOf = (session: string): IDBKeyRange =>
  IDBKeyRange.bound([session, 0], [session, Number.POSITIVE_INFINITY]);

async function put(tx: Moving, record: RecordFile, order: number): Promise<void> {
  const { header, entries, signatures, closing, personal = [] } = record;
  const head = walkChain(header, entries).heads.at(-1) ?? "";
  const row: StoredSession = {
    ...{ session: header.session, header, head, count: entries.length, order, closing },
    ...{ state: closing ? "sealed" : "open", pen: "", signature: signatures[0] ?? "" },
  };
  await tx.objectStore("sessions").add(row);
  for (const [i, entry] of entries.entries()) {
    void tx
      .objectStore("entries")
      .add({ session: header.session, n: entry.n, entry, signature: signatures[i + 1] ?? "" })
      .catch(() => undefined);
  }
  for (const part of personal) {
    void tx
      .objectStore("personal")
      .add({ session: header.session, ...part })
      .catch(() => undefined);
  }
  await tx.objectStore("finding").put(
    rowFrom(
      header,
      clientIn(header, personal),
      entries.map(({ fact }) => fact),
      closing,
    ),
  );
}
