/**
 * The studio's rows on this device: IndexedDB, one transaction for all changes of one act, `durability: "strict"`, so
 * that what is shown as kept is on the disk. Every row passes its schema before it is written and after it is read.
 */
import type { DBSchema, IDBPDatabase } from "idb";
import { openDevice } from "../log/deviceStore";
import { type Answer, answer, refuse } from "../sums/answer";
import { type Change, kinds } from "./kinds";
import { type RowName, readRows, type StoredRow, type Studio } from "./studio";

export type StudioCode =
  | "storage-full"
  | "storage-lost"
  /** Not a row of this kind: our own mistake, kept from the disk. */
  | "not-valid"
  /** A row lies there that cannot be read; it is not written over. Taking it away is allowed. */
  | "unreadable";

export type ReadStudio = { readonly studio: Studio; readonly unreadable: readonly RowName[] };

export interface StudioStore {
  read(): Promise<Answer<ReadStudio, StudioCode>>;
  /** All changes or none. @returns the changes that put everything back. Never rejects. */
  keep(changes: readonly Change[]): Promise<Answer<readonly Change[], StudioCode>>;
}

interface StudioSchema extends DBSchema {
  rows: { key: [string, string]; value: StoredRow };
}

/** @param name of the database; tests take one each. */
export function indexedDbStudio(name = "gloveside-studio"): StudioStore {
  let opening: Promise<IDBPDatabase<StudioSchema>> | null = null;
  const forget = () => {
    opening = null;
  };
  const database = () => {
    opening ??= openDevice<StudioSchema>(name, 1, {
      upgrade: (db) => void db.createObjectStore("rows", { keyPath: ["kind", "id"] }),
      blocking: (_now, _next, event) => {
        (event.target as IDBDatabase).close();
        forget();
      },
      terminated: forget,
    });
    opening.catch(forget);
    return opening;
  };

  return {
    read: async () => {
      try {
        return answer(readRows(await (await database()).getAll("rows")));
      } catch (error) {
        return asTrouble(error);
      }
    },
    keep: async (changes) => {
      const wrong = changes.find(({ kind, value }) => value !== null && !kinds[kind].safeParse(value).success);
      if (wrong) return refuse("not-valid", (say) => say.kept.wrongShape(`${wrong.kind} ${wrong.id}`));
      try {
        const tx = (await database()).transaction("rows", "readwrite", { durability: "strict" });
        const before = await Promise.all(changes.map(({ kind, id }) => tx.store.get([kind, id])));
        const back = changes.map((change, at) => undoOf(change, before[at]));
        const locked = changes.find(({ value }, at) => value !== null && back[at] === null);
        if (locked) {
          await tx.done;
          return refuse("unreadable", (say) => say.kept.unreadable(`${locked.kind} ${locked.id}`));
        }
        for (const { kind, id, value } of changes) {
          const write = value === null ? tx.store.delete([kind, id]) : tx.store.put({ kind, id, value });
          write.catch(() => undefined);
        }
        await tx.done;
        return answer(back.flatMap((change) => (change ? [change] : [])));
      } catch (error) {
        return asTrouble(error);
      }
    },
  };
}

/** What puts a row back as it was; null where what lies there cannot be read. */
function undoOf({ kind, id }: Change, before: StoredRow | undefined): Change | null {
  if (!before) return { kind, id, value: null } as Change;
  const parsed = kinds[kind].safeParse(before.value);
  return parsed.success ? ({ kind, id, value: parsed.data } as Change) : null;
}

function asTrouble(error: unknown) {
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  if (name === "QuotaExceededError" || /NO_SPACE/.test((error as Error)?.message ?? ""))
    return refuse("storage-full", (say) => say.kept.noRoom);
  return refuse("storage-lost", (say) => say.kept.noAnswer(name));
}
