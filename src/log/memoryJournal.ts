/**
 * The journal's twin in memory: same promises, no disk. Trouble can be ordered for the next writes, so that a test or a
 * rehearsal can see what happens when nothing can be kept.
 */
import { makeBatch, signAll, trouble } from "./batch";
import type { Digest } from "./canonical";
import { headOfHeader } from "./chain";
import { Header } from "./header";
import type { Journal, JournalTrouble, JournalTroubleCode, KeptSession, Signer, Writer } from "./journal";
import { verifyKept } from "./kept";
import { oneAtATime } from "./oneAtATime";
import type { Closing } from "./seal";

type Held = { -readonly [K in keyof KeptSession]: KeptSession[K] };

export type MemoryJournal = Journal & {
  /** The next `times` writes fail so, with nothing kept. */
  failNext(code: JournalTroubleCode, times?: number): void;
  /** Forgets every writer, as a killed page does. What was kept stays. */
  killWriters(): void;
};

export function memoryJournal(signer: Signer): MemoryJournal {
  const sessions = new Map<string, Held>();
  const pens = new Map<string, symbol>();
  let ordered: JournalTroubleCode[] = [];

  const orderedTrouble = (): JournalTrouble | null => {
    const code = ordered.shift();
    return code === undefined ? null : trouble(code, "Ordered for a test.");
  };
  const snapshot = (held: Held): KeptSession => structuredClone(held);

  const writerFor = (session: string, held: Held): Writer => {
    const pen = Symbol(session);
    pens.set(session, pen);
    const inTurn = oneAtATime();
    const refused = (): JournalTrouble | null => {
      if (pens.get(session) !== pen) return trouble("other-writer", "This session has another writer.");
      if (held.closing) return trouble("session-sealed", "This session is sealed.");
      return null;
    };
    return {
      session,
      get head() {
        return held.head;
      },
      get count() {
        return held.entries.length;
      },
      append: (facts, stamp) =>
        inTurn(async () => {
          if (facts.length === 0) return { ok: true, entries: [] };
          const batch = await makeBatch({ count: held.entries.length, head: held.head }, facts, stamp, signer);
          if (!batch.ok) return batch;
          const no = refused() ?? orderedTrouble();
          if (no) return no;
          held.entries = [...held.entries, ...structuredClone(batch.entries)];
          held.signatures = [...held.signatures, ...batch.signatures];
          held.head = batch.head;
          return { ok: true, entries: batch.entries };
        }),
      finish: (closing: Closing) =>
        inTurn(async () => {
          const no = refused() ?? orderedTrouble();
          if (no) return no;
          held.closing = structuredClone(closing);
          return { ok: true };
        }),
      release: () =>
        inTurn(async () => {
          if (pens.get(session) === pen) pens.delete(session);
        }),
    };
  };

  return {
    failNext: (code, times = 1) => {
      ordered = Array.from({ length: times }, () => code);
    },
    killWriters: () => pens.clear(),
    open: async (given) => {
      const header = Header.safeParse(given);
      if (!header.success) return trouble("not-a-fact", `Header: ${header.error.issues[0]?.message}`);
      if (sessions.has(given.session)) return trouble("session-exists", "This session is already kept.");
      const head: Digest = headOfHeader(header.data);
      const signatures = await signAll([head], signer);
      if (signatures === null) return trouble("key-lost", "The key of this device does not sign.");
      const no = orderedTrouble();
      if (no) return no;
      const held: Held = { header: header.data, entries: [], signatures, head, closing: null };
      sessions.set(given.session, held);
      return { ok: true, writer: writerFor(given.session, held) };
    },
    resume: async (session) => {
      const held = sessions.get(session);
      if (!held) return trouble("session-unknown", "No such session is kept.");
      if (held.closing) return trouble("session-sealed", "This session is sealed.");
      if (pens.has(session)) return trouble("other-writer", "This session has another writer.");
      const kept = await verifyKept(snapshot(held));
      return kept.ok ? { ok: true, kept: kept.kept, writer: writerFor(session, held) } : kept;
    },
    read: async (session) => {
      const held = sessions.get(session);
      return held ? verifyKept(snapshot(held)) : trouble("session-unknown", "No such session is kept.");
    },
    unfinished: async () => {
      const open = [...sessions].filter(([, held]) => held.closing === null).reverse();
      return {
        ok: true,
        sessions: open.map(([session, { header, entries }]) => ({ session, header, entries: entries.length })),
      };
    },
    lastHead: async (station) => {
      const last = [...sessions.values()].filter((held) => held.header.input.station === station).at(-1);
      return { ok: true, head: last?.head ?? null };
    },
  };
}
