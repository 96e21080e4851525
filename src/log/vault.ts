/**
 * The lock of the records, if the studio set one. A session that goes on is kept open, since a kill must not ask gloved
 * hands for a passphrase; once sealed it is put away, to the lock's public half. The other half is in memory alone, from
 * unlocking until `close` or the end of the page.
 */

import type { LockedTrouble } from "../locked/locked";
import { newRecordsLock, openLock, publicKeyOf, type RecordsLock, withPassphrase } from "../locked/recordsLock";
import type { OpeningPair } from "../locked/sealTo";
import { type AwayRow, foundOf, putAway, rowOf, type Whole, wholeOf } from "./away";
import { type FindingRow, rowFrom } from "./findingRow";
import { type LogDb, logDatabase, type StoredSession } from "./logDatabase";
import { clientIn } from "./personal";

export type VaultState = {
  readonly at: "none" | "locked" | "open";
  /** Sessions put away, and those of them that no key in memory opens. */
  readonly away: number;
  readonly unread: number;
  /** Sealed, but not put away yet: there was no room, or a kill came between. */
  readonly waiting: number;
};
export type LockDone = { readonly ok: true } | LockedTrouble;
/** How far it has come: sessions done, of how many. */
export type Moved = (done: number, of: number) => void;

export interface Vault {
  state(): Promise<VaultState>;
  /** Sets a lock, or a new one where the old passphrase is forgotten: what lies under that one stays there. */
  begin(passphrase: string, moved?: Moved): Promise<LockDone>;
  unlock(passphrase: string): Promise<LockDone>;
  /** Forgets the key: locked again. */
  close(): void;
  change(old: string, next: string): Promise<LockDone>;
  /** Everything that the keys in memory open is put back, and the lock is taken off once nothing lies under it. */
  end(moved?: Moved): Promise<void>;
  /** Puts sealed sessions away that are not yet; after a kill between seal and lock, too. Without a lock, nothing. */
  tidy(moved?: Moved): Promise<void>;
  /** What is away and can be read now: rows of the index, of the log, and one session whole. */
  found(): Promise<readonly FindingRow[]>;
  rows(): Promise<readonly StoredSession[]>;
  whole(session: string): Promise<Whole | "locked" | null>;
  /** Puts one session back where it was, for a change; `tidy` puts it away again. */
  bringBack(session: string): Promise<"locked" | "back" | null>;
}

const stores = ["sessions", "entries", "finding", "personal", "away", "awayBodies"] as const;
const every = (session: string): IDBKeyRange =>
  IDBKeyRange.bound([session, Number.NEGATIVE_INFINITY], [session, Number.POSITIVE_INFINITY]);

export function openVault(name?: string, work?: number): Vault {
  const { open: database } = logDatabase(name);
  const keys = new Map<string, OpeningPair>();
  const foundRows = new Map<string, FindingRow>();

  const locks = async (): Promise<readonly RecordsLock[]> =>
    (await (await database()).getAll("locks")).toSorted((a, b) => b.order - a.order);

  const tidy = async (moved: Moved = () => undefined): Promise<void> => {
    const [lock] = await locks();
    if (!lock) return;
    const db = await database();
    const sealed = await db.getAllKeysFromIndex("sessions", "state", every("sealed"));
    for (const [at, session] of sealed.entries()) {
      await move(db, session, lock);
      moved(at + 1, sealed.length);
    }
  };

  const readable = async (): Promise<readonly AwayRow[]> =>
    keys.size === 0 ? [] : (await (await database()).getAll("away")).filter(({ lock }) => keys.has(lock));

  /** In pieces: ten thousand at once would fill the memory. */
  async function opened<T>(rows: readonly AwayRow[], open: (row: AwayRow, pair: OpeningPair) => Promise<T>) {
    const all: T[] = [];
    for (let at = 0; at < rows.length; at += 200) {
      const some = rows.slice(at, at + 200).map((row) => {
        const pair = keys.get(row.lock);
        return pair ? open(row, pair) : Promise.reject(new Error("locked meanwhile"));
      });
      all.push(...(await Promise.all(some)));
    }
    return all;
  }

  const read = async (db: LogDb, session: string): Promise<Whole | "locked" | null> => {
    const [away, body] = await Promise.all([db.get("away", session), db.get("awayBodies", session)]);
    if (!away || !body) return null;
    const pair = keys.get(away.lock);
    return pair ? wholeOf(away, body, pair) : "locked";
  };

  const bringBack: Vault["bringBack"] = async (session) => {
    const db = await database();
    const whole = await read(db, session);
    if (whole === null || whole === "locked") return whole;
    const { row, rest, found } = whole;
    const tx = db.transaction(stores, "readwrite", { durability: "strict" });
    tx.done.catch(() => undefined);
    if ((await tx.objectStore("away").getKey(session)) === undefined) return "back";
    left(tx.objectStore("sessions").add(row));
    for (const entry of rest.entries) left(tx.objectStore("entries").add(entry));
    for (const part of rest.parts) left(tx.objectStore("personal").add(part));
    left(tx.objectStore("finding").put(found));
    left(tx.objectStore("away").delete(session));
    left(tx.objectStore("awayBodies").delete(session));
    await tx.done;
    foundRows.delete(session);
    return "back";
  };

  return {
    async state() {
      const db = await database();
      const [all, rows, sealed] = await Promise.all([
        locks(),
        db.getAll("away"),
        db.countFromIndex("sessions", "state", every("sealed")),
      ]);
      const unread = rows.filter(({ lock }) => !keys.has(lock)).length;
      const [newest] = all;
      const at = newest ? (keys.has(newest.id) ? "open" : "locked") : "none";
      return { at, away: rows.length, unread, waiting: newest ? sealed : 0 };
    },
    async begin(passphrase, moved) {
      const order = ((await locks())[0]?.order ?? 0) + 1;
      const made = await newRecordsLock(passphrase, order, work);
      if (!made.ok) return made;
      const tx = (await database()).transaction("locks", "readwrite", { durability: "strict" });
      await tx.store.put(made.lock);
      await tx.done;
      keys.set(made.lock.id, made.pair);
      await tidy(moved);
      return { ok: true };
    },
    async unlock(passphrase) {
      let refused: LockDone = { ok: false, code: "not-a-lock", message: "The records are not locked." };
      for (const lock of await locks()) {
        const one = await openLock(lock, passphrase);
        if (one.ok) {
          keys.set(lock.id, one.pair);
          return { ok: true };
        }
        refused = one;
      }
      return refused;
    },
    close() {
      keys.clear();
      foundRows.clear();
    },
    async change(old, next) {
      const [lock] = await locks();
      if (!lock) return { ok: false, code: "not-a-lock", message: "The records are not locked." };
      const changed = await withPassphrase(lock, old, next, work);
      if (!changed.ok) return changed;
      const tx = (await database()).transaction("locks", "readwrite", { durability: "strict" });
      await tx.store.put(changed.lock);
      await tx.done;
      return { ok: true };
    },
    async end(moved = () => undefined) {
      const rows = await readable();
      for (const [at, { session }] of rows.entries()) {
        await bringBack(session);
        moved(at + 1, rows.length);
      }
      const tx = (await database()).transaction(["locks", "away"], "readwrite", { durability: "strict" });
      const still = new Set((await tx.objectStore("away").getAll()).map(({ lock }) => lock));
      for (const id of keys.keys()) if (!still.has(id)) left(tx.objectStore("locks").delete(id));
      await tx.done;
      keys.clear();
      foundRows.clear();
    },
    tidy,
    async found() {
      const missing = (await readable()).filter(({ session }) => !foundRows.has(session));
      for (const row of await opened(missing, foundOf)) {
        foundRows.set(row.session, row);
      }
      const here = new Set((await readable()).map(({ session }) => session));
      return [...foundRows.values()].filter(({ session }) => here.has(session));
    },
    async rows() {
      const db = await database();
      const all = await opened(await readable(), async (away, pair) => {
        const body = await db.get("awayBodies", away.session);
        return body ? [await rowOf(away, body, pair)] : [];
      });
      return all.flat();
    },
    whole: async (session) => read(await database(), session),
    bringBack,
  };
}

/** Sealed first, with nothing of the store held; then exchanged in one transaction, if it is still as it was read. */
async function move(db: LogDb, session: string, lock: RecordsLock): Promise<void> {
  const before = await lyingOpen(db, session);
  if (!before) return;
  const { away, body } = await putAway(before, lock.id, publicKeyOf(lock));
  const tx = db.transaction(stores, "readwrite", { durability: "strict" });
  tx.done.catch(() => undefined);
  const row = await tx.objectStore("sessions").get(session);
  const parts = await tx.objectStore("personal").getAll(every(session));
  const isSame = JSON.stringify([row, parts]) === JSON.stringify([before.row, before.rest.parts]);
  if (isSame) {
    left(tx.objectStore("away").add(away));
    left(tx.objectStore("awayBodies").add(body));
    left(tx.objectStore("sessions").delete(session));
    left(tx.objectStore("entries").delete(every(session)));
    left(tx.objectStore("personal").delete(every(session)));
    left(tx.objectStore("finding").delete(session));
  }
  await tx.done;
}

async function lyingOpen(db: LogDb, session: string): Promise<Whole | null> {
  const tx = db.transaction(stores);
  const [row, found, entries, parts] = await Promise.all([
    tx.objectStore("sessions").get(session),
    tx.objectStore("finding").get(session),
    tx.objectStore("entries").getAll(every(session)),
    tx.objectStore("personal").getAll(every(session)),
  ]);
  if (!row?.closing) return null;
  const client = clientIn(row.header, parts);
  return { row, found: found ?? rowFrom(row.header, client, [], row.closing), rest: { entries, parts } };
}

/** A write whose outcome the transaction tells. */
const left = (write: Promise<unknown>): void => void write.catch(() => undefined);
