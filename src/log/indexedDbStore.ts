/**
 * The log on the device: IndexedDB, `durability: "strict"` on every write, since the default may answer before the disk
 * has it. An answer is given only after the whole transaction is complete; any trouble inside aborts it whole.
 */
import { trouble } from "./batch";
import { leafTurned } from "./deviceStore";
import type { Done, EntryStore, ListedRow, PenAt } from "./entryStore";
import { atOpening, atSeal, clientFound, isFoundBy, withBatch, withoutClient } from "./findingRow";
import type { JournalTrouble } from "./journal";
import {
  type LogDb,
  type LogWrite,
  logDatabase,
  logName,
  type StoredEntry,
  type StoredPart,
  type StoredSession,
} from "./logDatabase";
import { clientIn, clientOf, erased, type PersonalPart } from "./personal";
import { sessionLocks } from "./sessionLocks";
import type { Vault } from "./vault";

type Write = LogWrite;

export type IndexedDbOptions = {
  name?: string;
  /** Web Locks, where there are any: a second page is refused at once. Without, the later pen wins and fences the other. */
  locks?: LockManager | undefined;
  /** The lock of the records; without one, nothing is put away. */
  vault?: Vault | undefined;
};

export const asTrouble = (error: unknown): JournalTrouble => {
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  // Chromium names a disk without room in the words of its file system only.
  const isFull = name === "QuotaExceededError" || /NO_SPACE/.test((error as Error)?.message ?? "");
  if (isFull) return trouble("storage-full", "The device has no room left for the log.");
  return trouble("storage-lost", `The log cannot be written or read: ${name} ${(error as Error)?.message ?? error}`);
};

const isLocked = trouble("records-locked", "It lies under the lock of the records. Unlock them on the Records page.");

export function indexedDbStore({ name = logName, locks, vault }: IndexedDbOptions = {}): EntryStore {
  const { open: database, forget } = logDatabase(name);

  /** One strict transaction. A refusal or an exception leaves nothing behind: a put that throws would else commit half. */
  async function write(act: (tx: Write) => Promise<Done>): Promise<Done> {
    let tx: Write | null = null;
    try {
      await leafTurned();
      tx = (await database()).transaction(["sessions", "entries", "finding", "personal", "away"], "readwrite", {
        durability: "strict",
      });
      // Whatever ends it early is told by what was awaited then.
      tx.done.catch(() => undefined);
      const answer = await act(tx);
      if (!answer.ok) await abort(tx);
      else await tx.done;
      return answer;
    } catch (error) {
      // What stopped the transaction says more than the abort that followed.
      const cause = tx?.error ?? error;
      if (tx) await abort(tx);
      if ((cause as Error)?.name === "InvalidStateError") forget();
      return asTrouble(cause);
    }
  }

  /** The row, where this pen may write at this place. */
  async function rowFor(tx: Write, at: PenAt): Promise<{ ok: true; row: StoredSession } | JournalTrouble> {
    const row = await tx.objectStore("sessions").get(at.session);
    if (!row) return trouble("session-unknown", "No such session is kept.");
    if (row.state === "sealed") return trouble("session-sealed", "This session is sealed.");
    if (row.pen !== at.pen || row.count !== at.count) {
      return trouble("other-writer", "This session has another writer.");
    }
    return { ok: true, row };
  }

  async function bringBack(session: string): Promise<Done> {
    try {
      return (await vault?.bringBack(session)) === "locked" ? isLocked : { ok: true };
    } catch (error) {
      return asTrouble(error);
    }
  }

  const { hold, letGo } = sessionLocks(locks);

  return {
    create: async ({ header, personal }, head, signature, pen) => {
      const { session } = header;
      if (!(await hold(session))) return trouble("session-exists", "This session is already kept.");
      const made = await write(async (tx) => {
        const sessions = tx.objectStore("sessions");
        if (await sessions.getKey(session)) return trouble("session-exists", "This session is already kept.");
        const newest = await sessions.index("order").openKeyCursor(null, "prev");
        const newestAway = await tx.objectStore("away").index("order").openKeyCursor(null, "prev");
        const order = Math.max(newest?.key ?? 0, newestAway?.key ?? 0) + 1;
        await sessions.add({ session, header, head, count: 0, state: "open", order, pen, signature, closing: null });
        left(tx.objectStore("finding").put(atOpening(header, clientIn(header, personal))));
        putParts(tx, session, personal);
        return { ok: true };
      });
      if (!made.ok) letGo(session);
      return made;
    },
    add: (at, batch, parts) =>
      write(async (tx) => {
        const found = await rowFor(tx, at);
        if (!found.ok) return found;
        const count = at.count + batch.entries.length;
        for (const [i, entry] of batch.entries.entries()) {
          const signature = batch.signatures[i] ?? "";
          left(tx.objectStore("entries").add({ session: at.session, n: entry.n, entry, signature }));
        }
        left(tx.objectStore("sessions").put({ ...found.row, head: batch.head, count }));
        putParts(tx, at.session, parts);
        const facts = batch.entries.map(({ fact }) => fact);
        if (facts.some(isFoundBy)) {
          left(tx.objectStore("finding").put(withBatch(await findingRow(tx, found.row), found.row.header, facts)));
        }
        return { ok: true };
      }),
    close: async (at, closing) => {
      const closed = await write(async (tx) => {
        const found = await rowFor(tx, at);
        if (!found.ok) return found;
        await tx.objectStore("sessions").put({ ...found.row, closing, state: "sealed" });
        const client = await clientHere(tx, found.row);
        left(tx.objectStore("finding").put(atSeal(found.row.header, client, closing)));
        return { ok: true };
      });
      // The seal stands whatever comes of this: it is tried again at the next start.
      if (closed.ok) void vault?.tidy().catch(() => undefined);
      return closed;
    },
    erase: async (session, places) => {
      const back = await bringBack(session);
      if (!back.ok) return back;
      const done = await write(async (tx) => {
        const row = await tx.objectStore("sessions").get(session);
        if (!row) return trouble("session-unknown", "No such session is kept.");
        for (const n of places) {
          if ((await tx.objectStore("personal").getKey([session, n])) !== undefined) putParts(tx, session, [erased(n)]);
        }
        const found = await tx.objectStore("finding").get(session);
        const isGone = places.includes(0) && (await clientHere(tx, row)).state === "erased";
        if (found && isGone) left(tx.objectStore("finding").put(withoutClient(found)));
        return { ok: true };
      });
      await vault?.tidy().catch(() => undefined);
      return done;
    },
    takePen: async (session, pen) => {
      if (!(await hold(session))) return trouble("other-writer", "Another page of this device writes this session.");
      const taken = await write(async (tx) => {
        const row = await tx.objectStore("sessions").get(session);
        if (!row) return trouble("session-unknown", "No such session is kept.");
        if (row.state === "sealed") return trouble("session-sealed", "This session is sealed.");
        await tx.objectStore("sessions").put({ ...row, pen });
        return { ok: true };
      });
      if (!taken.ok) letGo(session);
      return taken;
    },
    dropPen: async (session) => letGo(session),
    load: async (session) => {
      try {
        const tx = (await database()).transaction(["sessions", "entries", "personal"], "readonly");
        const [row, rows, parts] = await Promise.all([
          tx.objectStore("sessions").get(session),
          tx.objectStore("entries").getAll(every(session)),
          tx.objectStore("personal").getAll(every(session)),
        ]);
        if (row) return { ok: true, stored: asKept(row, rows, parts) };
        const away = await vault?.whole(session);
        if (away === "locked") return isLocked;
        if (!away) return trouble("session-unknown", "No such session is kept.");
        return { ok: true, stored: asKept(away.row, away.rest.entries, away.rest.parts) };
      } catch (error) {
        return asTrouble(error);
      }
    },
    all: async () => {
      try {
        const db = await database();
        const here = await withClients(db, await db.getAllFromIndex("sessions", "order"));
        const away = (await vault?.rows()) ?? [];
        if (away.length === 0) return { ok: true, rows: here };
        const clients = new Map((await vault?.found())?.map((found) => [found.session, clientFound(found)]));
        const opened = away.map((row) => ({ ...row, client: clients.get(row.session) ?? { state: "none" as const } }));
        return { ok: true, rows: [...here, ...opened].sort((a, b) => b.order - a.order) };
      } catch (error) {
        return asTrouble(error);
      }
    },
    unfinished: async () => {
      try {
        const db = await database();
        return { ok: true, rows: await withClients(db, await db.getAllFromIndex("sessions", "state", every("open"))) };
      } catch (error) {
        return asTrouble(error);
      }
    },
    newestHead: async (station) => {
      try {
        const tx = (await database()).transaction(["sessions", "away"]);
        const here = await tx.objectStore("sessions").index("station").openCursor(every(station), "prev");
        const away = await tx.objectStore("away").index("station").openCursor(every(station), "prev");
        const isAway =
          (away?.value.order ?? Number.NEGATIVE_INFINITY) > (here?.value.order ?? Number.NEGATIVE_INFINITY);
        return { ok: true, head: (isAway ? away : here)?.value.head ?? null };
      } catch (error) {
        return asTrouble(error);
      }
    },
  };
}

function asKept(row: StoredSession, rows: readonly StoredEntry[], parts: readonly StoredPart[]) {
  const { header, head, closing } = row;
  const entries = rows.map((r) => r.entry);
  const signatures = [row.signature, ...rows.map((r) => r.signature)];
  const personal = parts.map(({ session: _session, ...part }) => part);
  return { header, entries, signatures, head, closing, personal };
}

/** The row that a session is found by; one from before there was an index begins with what its header says. */
const findingRow = async (tx: Write, row: StoredSession) =>
  (await tx.objectStore("finding").get(row.session)) ?? atOpening(row.header, await clientHere(tx, row));

const clientHere = async (tx: Write, { session, header }: StoredSession) =>
  clientOf(header, await tx.objectStore("personal").get([session, 0]));

function putParts(tx: Write, session: string, parts: readonly PersonalPart[]): void {
  for (const part of parts) left(tx.objectStore("personal").put({ session, ...part }));
}

/** Newest first. The references are read at once: one look for each of ten thousand sessions would be slow. */
async function withClients(db: LogDb, rows: readonly StoredSession[]): Promise<readonly (StoredSession & ListedRow)[]> {
  const parts = await db.getAllFromIndex("personal", "n", 0);
  const bySession = new Map(parts.map((part) => [part.session, part]));
  return rows.map((row) => ({ ...row, client: clientOf(row.header, bySession.get(row.session)) })).reverse();
}

/** All keys that begin with this and go on with a number. */
const every = (first: string) =>
  IDBKeyRange.bound([first, Number.NEGATIVE_INFINITY], [first, Number.POSITIVE_INFINITY]);

/** A write whose outcome the transaction tells: one that fails aborts it, and `tx.done` says why. */
const left = (write: Promise<unknown>): void => void write.catch(() => undefined);

/** Waits until nothing of the transaction can reach the disk any more. */
async function abort(tx: Write): Promise<void> {
  const ended = tx.done.catch(() => undefined);
  try {
    tx.abort();
  } catch {
    // It had ended by itself.
  }
  await ended;
}
