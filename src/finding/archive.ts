/** The archive of this device: asks the index the narrowest part of a question, and makes the index again if it must. */
import type { JournalTrouble } from "../log";
import { type FindingRow, nameKey, rowFrom } from "../log/findingRow";
import { asTrouble } from "../log/indexedDbStore";
import { type LogDb, logDatabase } from "../log/logDatabase";
import { clientOf } from "../log/personal";
import type { Vault } from "../log/vault";
import { answers, inOrder, lotAsked, type Query } from "./query";

export type Found =
  | {
      readonly ok: true;
      readonly rows: readonly FindingRow[];
      /** Sessions under the lock of the records, which were not looked at: the answer is not whole. */
      readonly locked: number;
    }
  | JournalTrouble;

export interface Archive {
  find(query: Query): Promise<Found>;
  /** Fills in what is missing; `anew` makes every row again. */
  mend(anew?: boolean): Promise<{ readonly ok: true; readonly made: number } | JournalTrouble>;
}

export function archive(name?: string, vault?: Vault): Archive {
  const { open } = logDatabase(name);
  let isWhole = false;

  const mend = async (anew: boolean): Promise<number> => {
    const db = await open();
    const [kept, known] = await Promise.all([db.getAllKeys("sessions"), anew ? [] : db.getAllKeys("finding")]);
    const has = new Set<string>(known);
    const missing = kept.filter((session) => !has.has(session));
    for (let at = 0; at < missing.length; at += batch) await makeRows(db, missing.slice(at, at + batch));
    isWhole = true;
    return missing.length;
  };

  return {
    async find(query) {
      try {
        if (!isWhole) await mend(false);
        const db = await open();
        // Under a lock there is no index: what is away is looked through, once it has been opened.
        const [here, away] = await Promise.all([narrowed(db, query), vault?.found() ?? []]);
        const rows = inOrder([...here, ...away].filter((row) => answers(row, query)));
        return { ok: true, rows, locked: (await vault?.state())?.unread ?? 0 };
      } catch (error) {
        return asTrouble(error);
      }
    },
    async mend(anew = false) {
      try {
        return { ok: true, made: await mend(anew) };
      } catch (error) {
        return asTrouble(error);
      }
    },
  };
}

/** Sessions read at once while the index is made again: memory stays bounded. */
const batch = 50;

async function makeRows(db: LogDb, sessions: readonly string[]): Promise<void> {
  const tx = db.transaction(["sessions", "entries", "finding", "personal"], "readwrite");
  for (const session of sessions) {
    const row = await tx.objectStore("sessions").get(session);
    if (!row) continue;
    const range = IDBKeyRange.bound([session, 0], [session, Number.POSITIVE_INFINITY]);
    const entries = row.closing ? [] : await tx.objectStore("entries").getAll(range);
    const facts = entries.map(({ entry }) => entry.fact);
    const client = clientOf(row.header, await tx.objectStore("personal").get([session, 0]));
    void tx.objectStore("finding").put(rowFrom(row.header, client, facts, row.closing));
  }
  await tx.done;
}

/** All keys that begin with the text. */
const beginning = (text: string): IDBKeyRange => IDBKeyRange.bound(text, `${text}\uffff`);

/** The rows of the part that is likely to name the fewest sessions. A product's words may stand anywhere: no index. */
async function narrowed(db: LogDb, query: Query): Promise<readonly FindingRow[]> {
  const lot = lotAsked(query.lot);
  if (lot !== "") return once(await db.getAllFromIndex("finding", "lots", beginning(lot)));
  const client = nameKey(query.client);
  if (client !== "") return db.getAllFromIndex("finding", "client", beginning(client));
  if (query.deviation !== "") return db.getAllFromIndex("finding", "deviations", query.deviation);
  const product = nameKey(query.product);
  if (product !== "") return ofProduct(db, product);
  if (query.from === "" && query.to === "") return db.getAll("finding");
  // No day lies between, and a range that ends before it begins is an error.
  if (query.to !== "" && query.from > query.to) return [];
  return db.getAllFromIndex("finding", "day", IDBKeyRange.bound(query.from, query.to || "9999-12-31"));
}

/** A session with two lots that begin alike is named twice. */
const once = (rows: readonly FindingRow[]): readonly FindingRow[] => [
  ...new Map(rows.map((row) => [row.session, row])).values(),
];

/** The names that hold the words, then their sessions: there are few names, however many sessions. */
async function ofProduct(db: LogDb, product: string): Promise<readonly FindingRow[]> {
  const index = db.transaction("finding").store.index("products");
  const names: string[] = [];
  let cursor = await index.openKeyCursor(null, "nextunique");
  while (cursor) {
    if (cursor.key.includes(product)) names.push(cursor.key);
    cursor = await cursor.continue();
  }
  const rows = await Promise.all(names.map((name) => db.getAllFromIndex("finding", "products", name)));
  return once(rows.flat());
}
