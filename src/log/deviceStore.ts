/**
 * Where every database of ours is opened. None is written to before a fresh leaf was turned (freshLeaf.ts): in every life of
 * the page, and again after the browser has closed its store by itself, as Chromium does on a full disk. Reading never waits.
 */
import { type DBSchema, type IDBPDatabase, type OpenDBCallbacks, openDB, unwrap } from "idb";
import { freshLeaf } from "./freshLeaf";

let turning: Promise<void> | null = null;
let isTurned = false;
let tellLoss: (why: string) => void = () => undefined;

/** @param told of every loss that the browser owns up to, in its words. */
export const watchLosses = (told: (why: string) => void): void => {
  tellLoss = told;
};

/** Rejects, with what the browser said, where no leaf can be turned: then nothing may be written. */
export function leafTurned(): Promise<void> {
  turning ??= freshLeaf().then(({ lost }) => {
    isTurned = true;
    if (lost !== null) tellLoss(lost);
  });
  turning.catch(spendLeaf);
  return turning;
}

function spendLeaf(): void {
  turning = null;
  isTurned = false;
}

const notTurned = () =>
  new DOMException("The browser closed its store, and it is not safe to write to yet.", "UnknownError");

/** As `openDB`; `terminated` is also called when the browser gives a transaction up for a reason of its own. */
export async function openDevice<Schema extends DBSchema | unknown>(
  name: string,
  version: number,
  { upgrade, terminated, ...callbacks }: OpenDBCallbacks<Schema>,
): Promise<IDBPDatabase<Schema>> {
  await leafTurned().catch(() => undefined);
  const ended = () => {
    spendLeaf();
    terminated?.();
  };
  const database = await openDB<Schema>(name, version, {
    ...callbacks,
    terminated: ended,
    upgrade: (made, from, to, tx, event) => {
      if (isTurned) return upgrade?.(made, from, to, tx, event);
      tx.done.catch(() => undefined);
      tx.abort();
    },
  });
  guard(unwrap(database), ended);
  return database;
}

function guard(database: IDBDatabase, ended: () => void): void {
  database.transaction = (stores, mode, options) => {
    if (mode === "readwrite" && !isTurned) throw notTurned();
    return IDBDatabase.prototype.transaction.call(database, stores, mode, options);
  };
  // The event of a transaction goes on to its database.
  database.addEventListener("abort", ({ target }) => {
    if ((target as IDBTransaction | null)?.error?.name !== "UnknownError") return;
    database.close();
    ended();
  });
}
