import "fake-indexeddb/auto";
import { describe, expect, test } from "vitest";
import { tempFolder } from "../../tests/support/tempFolder";
import type { SessionFact } from "../session/fact";
import { fileJournal } from "./fileJournal";
import {
  indexedDbJournal,
  type Journal,
  makeClosing,
  memoryJournal,
  newSigner,
  type Signer,
  type Writer,
} from "./index";
import { anySummary, began, done, sampleSession, smallOpening, stampAt } from "./samples/smallSession";

const later = "017f22e2-79b1-7cc3-98c4-dc0c0c07398f";

const kinds: Record<string, (signer: Signer) => Promise<Journal>> = {
  memory: async (signer) => memoryJournal(signer),
  IndexedDB: async (signer) => indexedDbJournal(signer, { name: crypto.randomUUID() }),
  files: async (signer) => fileJournal(tempFolder("log"), signer),
};

const opened = async (journal: Journal, signer: Signer, session = sampleSession): Promise<Writer> => {
  const answer = await journal.open(smallOpening(signer.publicKey, session));
  if (!answer.ok) throw new Error(answer.message);
  return answer.writer;
};

describe.each(Object.entries(kinds))("a journal in %s", (_kind, make) => {
  const fresh = async () => {
    const signer = await newSigner();
    const journal = await make(signer);
    return { signer, journal, writer: await opened(journal, signer) };
  };

  test("gives back the facts it was given, numbered and linked", async () => {
    const { journal, writer } = await fresh();
    await writer.append([began], stampAt(0));
    const second = await writer.append([done("wash", 1, 900), done("gloves", 1)], stampAt(900));
    const read = await journal.read(sampleSession);
    expect(second.ok && second.entries.map((entry) => entry.n)).toEqual([2, 3]);
    expect(read.ok && read.kept.entries.map((entry) => entry.fact)).toEqual([
      began,
      done("wash", 1, 900),
      done("gloves", 1),
    ]);
    expect(read.ok && read.kept.head).toBe(writer.head);
    expect(read.ok && read.kept.signatures.length).toBe(4);
  });

  test("keeps appends in the order they were asked for, without being waited on", async () => {
    const { journal, writer } = await fresh();
    await Promise.all(Array.from({ length: 12 }, (_, i) => writer.append([done(`s${i}`, i)], stampAt(i))));
    const read = await journal.read(sampleSession);
    expect(read.ok && read.kept.entries.map((entry) => entry.fact.cause)).toEqual([
      0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11,
    ]);
  });

  test("keeps none of a batch with one thing in it that is no fact", async () => {
    const { journal, writer } = await fresh();
    const stranger = { type: "v9.Unheard", witnessedMs: 0, cause: 1 } as unknown as SessionFact;
    const answer = await writer.append([began, stranger], stampAt(0));
    const read = await journal.read(sampleSession);
    expect(!answer.ok && answer.code).toBe("not-a-fact");
    expect(read.ok && read.kept.entries).toEqual([]);
  });

  test("writes nothing for an event without facts", async () => {
    const { writer } = await fresh();
    expect(await writer.append([], stampAt(0))).toEqual({ ok: true, entries: [] });
    expect(writer.count).toBe(0);
  });

  test("refuses to open the same session twice", async () => {
    const { signer, journal } = await fresh();
    const again = await journal.open(smallOpening(signer.publicKey));
    expect(!again.ok && again.code).toBe("session-exists");
  });

  test("refuses a header that names another device's key", async () => {
    const { journal } = await fresh();
    const answer = await journal.open(smallOpening("ab".repeat(32), later));
    expect(!answer.ok && answer.code).toBe("key-lost");
  });

  test("says so of a session it does not hold", async () => {
    const { journal } = await fresh();
    const answers = await Promise.all([journal.read(later), journal.resume(later)]);
    expect(answers.map((a) => !a.ok && a.code)).toEqual(["session-unknown", "session-unknown"]);
  });

  test("goes on where it was when the pen is taken up again", async () => {
    const { journal, writer } = await fresh();
    await writer.append([began], stampAt(0));
    await writer.release();
    const resumed = await journal.resume(sampleSession);
    if (!resumed.ok) throw new Error(resumed.message);
    const next = await resumed.writer.append([done("wash", 1)], stampAt(0));
    expect(resumed.kept.entries.length).toBe(1);
    expect(next.ok && next.entries[0]?.n).toBe(2);
  });

  test("refuses a pen that was put down", async () => {
    const { journal, writer } = await fresh();
    await writer.release();
    await journal.resume(sampleSession);
    const answer = await writer.append([began], stampAt(0));
    expect(!answer.ok && answer.code).toBe("other-writer");
  });

  test("lists all sessions, newest first, and the unfinished ones until they are sealed", async () => {
    const { signer, journal, writer } = await fresh();
    const second = await opened(journal, signer, later);
    await second.append([began], stampAt(0));
    const before = await journal.unfinished();
    const read = await journal.read(later);
    if (!read.ok) throw new Error(read.message);
    await second.finish(await makeClosing(read.kept, anySummary, stampAt(5).at, signer));
    const after = await journal.unfinished();
    expect(before.ok && before.sessions.map((s) => s.session)).toEqual([later, sampleSession]);
    expect(after.ok && after.sessions.map((s) => s.session)).toEqual([sampleSession]);
    expect(writer.count).toBe(0);
    const all = await journal.all();
    expect(all.ok && all.sessions.map(({ session, entries }) => [session, entries])).toEqual([
      [later, 1],
      [sampleSession, 0],
    ]);
  });

  test("takes nothing more once sealed, and gives the closing back", async () => {
    const { signer, journal, writer } = await fresh();
    await writer.append([began], stampAt(0));
    const read = await journal.read(sampleSession);
    if (!read.ok) throw new Error(read.message);
    const closing = await makeClosing(read.kept, anySummary, stampAt(5).at, signer);
    expect(await writer.finish(closing)).toEqual({ ok: true });
    const append = await writer.append([done("wash", 1)], stampAt(9));
    const resume = await journal.resume(sampleSession);
    const sealed = await journal.read(sampleSession);
    expect(append.ok).toBe(false);
    expect(!resume.ok && resume.code).toBe("session-sealed");
    expect(sealed.ok && sealed.kept.closing).toEqual(closing);
  });

  test("refuses a seal that is not of its last head", async () => {
    const { signer, journal, writer } = await fresh();
    await writer.append([began], stampAt(0));
    const read = await journal.read(sampleSession);
    if (!read.ok) throw new Error(read.message);
    const closing = await makeClosing(read.kept, anySummary, stampAt(5).at, signer);
    await writer.append([done("wash", 1)], stampAt(6));
    const answer = await writer.finish(closing);
    expect(!answer.ok && answer.code).toBe("not-a-fact");
  });

  test("hands the newest session's head to the next header of the station", async () => {
    const { signer, journal, writer } = await fresh();
    await writer.append([began], stampAt(0));
    expect(await journal.lastHead("Station 1")).toEqual({ ok: true, head: writer.head });
    const second = await opened(journal, signer, later);
    expect(await journal.lastHead("Station 1")).toEqual({ ok: true, head: second.head });
    expect(await journal.lastHead("Station 2")).toEqual({ ok: true, head: null });
  });
});
