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
    const tx = db.transaction(["sessions", "entries", "finding", "staged"]);
    const all = (store: string) => asked(tx.objectStore(store).getAll());
    const [sessions, entries, found, staged] = await Promise.all(["sessions", "entries", "finding", "staged"].map(all));
    db.close();
    return {
      records: sessions?.map(({ session, header, signature, closing }) => {
        const own = entries?.filter((entry) => entry.session === session) ?? [];
        const signatures = [signature, ...own.map((entry) => entry.signature)];
        return { header, entries: own.map(({ entry }) => entry), signatures, closing };
      }),
      found: found?.map(({ session }) => session),
      staged: staged?.length,
    };
  }) as Promise<DiskNow>;
