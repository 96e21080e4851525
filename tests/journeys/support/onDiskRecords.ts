/** The records as they lie in the browser's store, for a verifier outside the browser. */
import type { Page } from "playwright-core";
import type { RecordFile } from "../../../src/export/recordFile";

export interface DiskNow {
  readonly records: readonly RecordFile[];
  /** Rows of the index, by session. */
  readonly found: readonly string[];
  /** What a restore has left lying. */
  readonly staged: number;
}

export const diskNow = (page: Page): Promise<DiskNow> =>
  page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const db = await asked(indexedDB.open("gloveside-log"));
    const stores = ["sessions", "entries", "finding", "staged", "personal"];
    const tx = db.transaction(stores);
    const all = (store: string) => asked(tx.objectStore(store).getAll());
    const [sessions, entries, found, staged, parts] = await Promise.all(stores.map(all));
    db.close();
    return {
      records: sessions?.map(({ session, header, signature, closing }) => {
        const own = entries?.filter((entry) => entry.session === session) ?? [];
        const signatures = [signature, ...own.map((entry) => entry.signature)];
        const beside = parts?.filter((part) => part.session === session) ?? [];
        const personal = beside.map(({ session: _session, ...part }) => part);
        return { header, entries: own.map(({ entry }) => entry), signatures, closing, personal };
      }),
      found: found?.map(({ session }) => session),
      staged: staged?.length,
    };
  }) as Promise<DiskNow>;

/** All that any store of this page's origin holds, as one text. */
export const everyStored = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const all: unknown[] = [{ ...localStorage }, { ...sessionStorage }];
    for (const { name } of await indexedDB.databases()) {
      const db = await asked(indexedDB.open(name ?? ""));
      for (const store of db.objectStoreNames) all.push(await asked(db.transaction(store).objectStore(store).getAll()));
      db.close();
    }
    return JSON.stringify(all);
  });
