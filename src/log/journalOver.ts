/** The journal's rules over any store: sign first, then keep, then adopt the new head; one append at a time. */
import { makeBatch, signAll, trouble } from "./batch";
import type { Digest } from "./canonical";
import { headOfHeader } from "./chain";
import type { LogEntry } from "./entry";
import type { EntryStore, PenAt } from "./entryStore";
import { Header } from "./header";
import type { Journal, SignedSoFar, Signer, Writer } from "./journal";
import { verifyKept } from "./kept";
import { oneAtATime } from "./oneAtATime";
import { type Attachment, belongs, firstStranger, notesIn, type PersonalPart } from "./personal";
import { Closing } from "./seal";
import { uuidv7 } from "./uuidv7";

export function journalOver(store: EntryStore, signer: Signer): Journal {
  return {
    open: async (given) => {
      const header = Header.safeParse(given.header);
      if (!header.success) return trouble("not-a-fact", `Header: ${header.error.issues[0]?.message ?? "wrong shape"}`);
      if (header.data.device !== signer.publicKey) return trouble("key-lost", "The header names another device's key.");
      const stranger = firstStranger({ header: header.data, entries: [] }, given.personal);
      if (stranger) return trouble("not-a-fact", "What is kept beside the header is not what it commits to.");
      const head = headOfHeader(header.data);
      const signatures = await signAll([head], signer);
      if (!signatures?.[0]) return trouble("key-lost", "The key of this device does not sign.");
      const pen = uuidv7();
      const made = await store.create({ header: header.data, personal: given.personal }, head, signatures[0], pen);
      const signed = { header: header.data, entries: [], signatures: [signatures[0]] };
      return made.ok ? { ok: true, writer: writerAt(pen, head, signed) } : made;
    },
    resume: async (session) => {
      const pen = uuidv7();
      const taken = await store.takePen(session, pen);
      if (!taken.ok) return taken;
      const kept = await read(session);
      if (kept.ok && kept.kept.header.device === signer.publicKey) {
        return { ...kept, writer: writerAt(pen, kept.kept.head, kept.kept) };
      }
      await store.dropPen(session, pen);
      return kept.ok ? trouble("key-lost", "This session was begun under another key.") : kept;
    },
    read,
    all: async () => asListed(await store.all()),
    // One restored from another device's backup cannot be taken up here: its key is there.
    unfinished: async () => {
      const found = await store.unfinished();
      return asListed(
        found.ok ? { ...found, rows: found.rows.filter(({ header }) => header.device === signer.publicKey) } : found,
      );
    },
    erase: (session, places) => store.erase(session, places),
    lastHead: (station) => store.newestHead(station),
  };

  async function read(session: string) {
    const loaded = await store.load(session);
    return loaded.ok ? verifyKept(loaded.stored) : loaded;
  }

  function writerAt(pen: string, startHead: string, { header, ...before }: SignedSoFar): Writer {
    const { session } = header;
    const entries = [...before.entries];
    const signatures = [...before.signatures];
    let head = startHead;
    const inTurn = oneAtATime();
    const attached = new Map<Digest, Attachment>();
    const here = (): PenAt => ({ session, pen, count: entries.length });
    return {
      session,
      get head() {
        return head;
      },
      get count() {
        return entries.length;
      },
      get signed() {
        return { header, entries: [...entries], signatures: [...signatures] };
      },
      attach: (note, attachment) => void attached.set(note, attachment),
      append: (facts, stamp) =>
        inTurn(async () => {
          if (facts.length === 0) return { ok: true, entries: [] };
          const batch = await makeBatch({ count: entries.length, head }, facts, stamp, signer);
          if (!batch.ok) return batch;
          const parts = partsFor(batch.entries, attached);
          if (!parts) return trouble("not-a-fact", "A note without its sound.");
          const added = await store.add(here(), batch, parts);
          if (!added.ok) return added;
          head = batch.head;
          entries.push(...batch.entries);
          signatures.push(...batch.signatures);
          return { ok: true, entries: batch.entries };
        }),
      finish: (given) =>
        inTurn(async () => {
          const closing = Closing.safeParse(given);
          if (!closing.success) return trouble("not-a-fact", `Closing: ${closing.error.issues[0]?.message}`);
          if (closing.data.seal.head !== head || closing.data.seal.entries !== entries.length) {
            return trouble("not-a-fact", "The seal is not of the last head.");
          }
          const closed = await store.close(here(), closing.data);
          if (closed.ok) await store.dropPen(session, pen);
          return closed;
        }),
      release: () => inTurn(() => store.dropPen(session, pen)),
    };
  }
}

/** What the facts commit to, at their numbers; null where it was not handed in. */
function partsFor(entries: readonly LogEntry[], attached: Map<Digest, Attachment>): readonly PersonalPart[] | null {
  const parts: PersonalPart[] = [];
  for (const [n, note] of notesIn(entries)) {
    const attachment = attached.get(note);
    attached.delete(note);
    if (!attachment || !belongs({ n, ...attachment }, note)) return null;
    parts.push({ n, ...attachment });
  }
  return parts;
}

const asListed = (found: Awaited<ReturnType<EntryStore["all"]>>) =>
  found.ok
    ? {
        ok: true as const,
        sessions: found.rows.map(({ session, header, count, client, order }) => ({
          ...{ session, header, entries: count, client, order },
        })),
      }
    : found;
