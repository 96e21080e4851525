/**
 * What was taught, on this device and nowhere else: a database of its own, so that a backup of the log or of the studio does
 * not carry it. The one before the last is kept for "undo" until it is forgotten.
 */
import { openDevice } from "../log/deviceStore";
import { type OwnVoice, readOwnVoice } from "../recogniser/ownVoice/ownVoice";

const places = ["now", "before"] as const;

export interface OwnVoiceStore {
  read(): Promise<{ readonly now: OwnVoice | null; readonly before: OwnVoice | null; readonly canUndo: boolean }>;
  keep(own: OwnVoice): Promise<void>;
  undo(): Promise<void>;
  forget(): Promise<void>;
}

export function ownVoiceStore(name = "gloveside-own-voice"): OwnVoiceStore {
  const opening = () => openDevice(name, 1, { upgrade: (db) => void db.createObjectStore("voice") });
  const within = async <T>(work: (db: Awaited<ReturnType<typeof opening>>) => Promise<T>): Promise<T> => {
    const db = await opening();
    try {
      return await work(db);
    } finally {
      db.close();
    }
  };
  return {
    read: () =>
      within(async (db) => {
        const [now, before] = await Promise.all(places.map((place) => db.get("voice", place)));
        return { now: readOwnVoice(now), before: readOwnVoice(before), canUndo: before !== undefined };
      }),
    keep: (own) =>
      within(async (db) => {
        const tx = db.transaction("voice", "readwrite", { durability: "strict" });
        const now = await tx.store.get("now");
        await tx.store.put(now ?? null, "before");
        await tx.store.put(own, "now");
        await tx.done;
      }),
    undo: () =>
      within(async (db) => {
        const tx = db.transaction("voice", "readwrite", { durability: "strict" });
        const before = await tx.store.get("before");
        if (before) await tx.store.put(before, "now");
        else await tx.store.delete("now");
        await tx.store.delete("before");
        await tx.done;
      }),
    forget: () => within((db) => db.clear("voice")),
  };
}
