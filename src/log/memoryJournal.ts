/**
 * The journal's twin in memory: same promises, no disk. Trouble can be ordered for the next writes, so that a test or a
 * rehearsal can see what happens when nothing can be kept.
 */
import { trouble } from "./batch";
import type { Done, EntryStore, PenAt } from "./entryStore";
import type { Journal, JournalTroubleCode, KeptSession, Signer } from "./journal";
import { journalOver } from "./journalOver";
import { clientIn, erased } from "./personal";

type Held = { -readonly [K in keyof KeptSession]: KeptSession[K] } & { pen: string | null };

export type MemoryJournal = Journal & {
  /** The next `times` writes fail so, with nothing kept. */
  failNext(code: JournalTroubleCode, times?: number): void;
  /** Forgets every writer, as a killed page does. What was kept stays. */
  killWriters(): void;
};

export function memoryJournal(signer: Signer): MemoryJournal {
  const sessions = new Map<string, Held>();
  let ordered: JournalTroubleCode[] = [];

  const write = (at: PenAt, change: (held: Held) => void): Done => {
    const held = sessions.get(at.session);
    if (!held) return trouble("session-unknown", "No such session is kept.");
    if (held.closing) return trouble("session-sealed", "This session is sealed.");
    if (held.pen !== at.pen || held.entries.length !== at.count) {
      return trouble("other-writer", "This session has another writer.");
    }
    const no = ordered.shift();
    if (no) return trouble(no, "Ordered for a test.");
    change(held);
    return { ok: true };
  };

  const store: EntryStore = {
    create: async ({ header, personal }, head, signature, pen) => {
      if (sessions.has(header.session)) return trouble("session-exists", "This session is already kept.");
      const no = ordered.shift();
      if (no) return trouble(no, "Ordered for a test.");
      const empty = { entries: [], signatures: [signature], closing: null };
      sessions.set(header.session, { header, head, ...empty, personal, pen });
      return { ok: true };
    },
    add: async (at, batch, parts) =>
      write(at, (held) => {
        held.entries = [...held.entries, ...structuredClone(batch.entries)];
        held.signatures = [...held.signatures, ...batch.signatures];
        held.head = batch.head;
        held.personal = [...held.personal, ...parts];
      }),
    erase: async (session, places) => {
      const held = sessions.get(session);
      if (!held) return trouble("session-unknown", "No such session is kept.");
      const no = ordered.shift();
      if (no) return trouble(no, "Ordered for a test.");
      held.personal = held.personal.map((part) => (places.includes(part.n) ? erased(part.n) : part));
      return { ok: true };
    },
    close: async (at, closing) =>
      write(at, (held) => {
        held.closing = structuredClone(closing);
      }),
    takePen: async (session, pen) => {
      const held = sessions.get(session);
      if (!held) return trouble("session-unknown", "No such session is kept.");
      if (held.closing) return trouble("session-sealed", "This session is sealed.");
      if (held.pen !== null) return trouble("other-writer", "This session has another writer.");
      held.pen = pen;
      return { ok: true };
    },
    dropPen: async (session, pen) => {
      const held = sessions.get(session);
      if (held?.pen === pen) held.pen = null;
    },
    load: async (session) => {
      const held = sessions.get(session);
      if (!held) return trouble("session-unknown", "No such session is kept.");
      const { pen: _pen, ...stored } = held;
      return { ok: true, stored: structuredClone(stored) };
    },
    all: async () => ({ ok: true, rows: rowsOf([...sessions.values()]) }),
    unfinished: async () => ({
      ok: true,
      rows: rowsOf([...sessions.values()].filter((held) => held.closing === null)),
    }),
    newestHead: async (station) => {
      const here = [...sessions.values()].filter((held) => held.header.input.station === station);
      return { ok: true, head: here.at(-1)?.head ?? null };
    },
  };

  return {
    ...journalOver(store, signer),
    failNext: (code, times = 1) => {
      ordered = Array.from({ length: times }, () => code);
    },
    killWriters: () => {
      for (const held of sessions.values()) held.pen = null;
    },
  };
}

const rowsOf = (held: readonly Held[]) =>
  held
    .map(({ header, head, entries, personal }, order) => ({
      ...{ session: header.session, header, head, count: entries.length, order },
      client: clientIn(header, personal),
    }))
    .reverse();
