/** The database of the log: sessions, their entries, and the index they are found by, so that one transaction holds all. */
import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from "idb";
import type { RecordsLock } from "../locked/recordsLock";
import type { AwayBody, AwayRow } from "./away";
import { openDevice } from "./deviceStore";
import type { LogEntry } from "./entry";
import type { SessionRow } from "./entryStore";
import type { FindingRow } from "./findingRow";
import type { PersonalPart } from "./personal";
import type { Closing } from "./seal";

export type StoredSession = SessionRow & {
  state: "open" | "sealed";
  /** Rises with every session of this device; the wall clock may be set back, this is not. Below zero: restored. */
  order: number;
  pen: string;
  signature: string;
  closing: Closing | null;
};
export type StoredPart = PersonalPart & { session: string };
export type StoredEntry = { session: string; n: number; entry: LogEntry; signature: string };

/** Of one thing of a station, the newest word: whether it was left unready, and by the session of which order. */
export type Said = { readonly item: string; readonly order: number; readonly isUnready: boolean };
/** What was read of a station's sessions so far; `open` are the orders of those that went on then. Made again at need. */
export type LeftRow = {
  readonly station: string;
  readonly upTo: number;
  readonly open: readonly number[];
  readonly said: readonly Said[];
};

export interface LogSchema extends DBSchema {
  sessions: {
    key: string;
    value: StoredSession;
    indexes: { order: number; state: [string, number]; station: [string, number] };
  };
  entries: { key: [string, number]; value: StoredEntry };
  finding: {
    key: string;
    value: FindingRow;
    indexes: { lots: string; products: string; deviations: string; client: string; day: string };
  };
  /** What stands beside the chains, and nowhere else. */
  personal: { key: [string, number]; value: StoredPart; indexes: { n: number } };
  /** Sealed sessions that were put away under the records' lock, and are nowhere else. */
  away: { key: string; value: AwayRow; indexes: { order: number; station: [string, number] } };
  awayBodies: { key: string; value: AwayBody };
  /** The public half of each lock lies open; the newest one locks. */
  locks: { key: string; value: RecordsLock };
  left: { key: string; value: LeftRow };
  /** What a restore has read and checked, until all of it is; then it moves over in one transaction. */
  staged: { key: number; value: unknown };
}
export type LogDb = IDBPDatabase<LogSchema>;
export type LogWrite = IDBPTransaction<LogSchema, ["sessions", "entries", "finding", "personal", "away"], "readwrite">;

export const logName = "gloveside-log";

/** One connection, opened at the first call and again after it was lost. */
export function logDatabase(name: string = logName) {
  let opening: Promise<LogDb> | null = null;
  const forget = () => {
    opening = null;
  };
  const open = (): Promise<LogDb> => {
    opening ??= openDevice<LogSchema>(name, 5, {
      upgrade: async (db, from, _to, tx) => {
        if (from < 1) firstVersion(db);
        if (from < 2) secondVersion(db);
        if (from < 3) await thirdVersion(db, tx);
        if (from < 4) fourthVersion(db);
        db.createObjectStore("left", { keyPath: "station" });
      },
      // Another page upgrades or clears the store: let it, and open again at the next call.
      blocking: (_now, _next, event) => {
        (event.target as IDBDatabase).close();
        forget();
      },
      terminated: forget,
    });
    opening.catch(forget);
    return opening;
  };
  return { open, forget };
}

function firstVersion(db: LogDb): void {
  const sessions = db.createObjectStore("sessions", { keyPath: "session" });
  sessions.createIndex("order", "order", { unique: true });
  sessions.createIndex("state", ["state", "order"]);
  sessions.createIndex("station", ["header.input.station", "order"]);
  db.createObjectStore("entries", { keyPath: ["session", "n"] });
}

/** The index stands empty for what was kept before; it is filled when it is first asked. */
function secondVersion(db: LogDb): void {
  const finding = db.createObjectStore("finding", { keyPath: "session" });
  finding.createIndex("lots", "lotKeys", { multiEntry: true });
  finding.createIndex("products", "productKeys", { multiEntry: true });
  finding.createIndex("deviations", "deviations", { multiEntry: true });
  finding.createIndex("client", "clientKey");
  finding.createIndex("day", "day");
  db.createObjectStore("staged", { autoIncrement: true });
}

function fourthVersion(db: LogDb): void {
  const away = db.createObjectStore("away", { keyPath: "session" });
  away.createIndex("order", "order", { unique: true });
  away.createIndex("station", ["station", "order"]);
  db.createObjectStore("awayBodies", { keyPath: "session" });
  db.createObjectStore("locks", { keyPath: "id" });
}

/** Rows of format 1 have their client from the header, where it stays. */
async function thirdVersion(
  db: LogDb,
  tx: IDBPTransaction<LogSchema, StoreNames<LogSchema>[], "versionchange">,
): Promise<void> {
  db.createObjectStore("personal", { keyPath: ["session", "n"] }).createIndex("n", "n");
  let cursor = await tx.objectStore("finding").openCursor();
  while (cursor) {
    await cursor.update({ ...cursor.value, clientState: "inHeader" });
    cursor = await cursor.continue();
  }
}
