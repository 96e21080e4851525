import "fake-indexeddb/auto";
import { afterEach, describe, expect, test, vi } from "vitest";
import { attachmentOf, deviceSigner, indexedDbJournal, newSigner, type Signer } from "./index";
import { began, done, sampleSession, smallOpening, stampAt } from "./samples/smallSession";

afterEach(() => vi.restoreAllMocks());

const begin = async (signer: Signer, name: string, locks?: LockManager) => {
  const journal = indexedDbJournal(signer, { name, locks });
  const opened = await journal.open(smallOpening(signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  return { journal, writer: opened.writer };
};

const threeFacts = [done("wash", 1), done("gloves", 1), done("needle", 1)];

/** Lets `whole` puts of entries through, then does this to the next. */
const troubleAfter = (whole: number, act: (store: IDBObjectStore) => void) => {
  const add = IDBObjectStore.prototype.add;
  let count = 0;
  vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(function (this: IDBObjectStore, value: unknown) {
    if (++count > whole) act(this);
    return add.call(this, value);
  });
};
const throwing = (name: string) => () => {
  throw new DOMException("Ordered for a test.", name);
};
/** How a browser refuses at commit: the transaction aborts by itself, carrying the reason. */
const aborting = (name: string) => (store: IDBObjectStore) =>
  queueMicrotask(() => (store.transaction as unknown as { _abort(name: string): void })._abort(name));

const cases = [
  ["a put throws for want of room", throwing("QuotaExceededError"), "storage-full"],
  ["the commit fails for want of room", aborting("QuotaExceededError"), "storage-full"],
  ["the store breaks at a put", throwing("UnknownError"), "storage-lost"],
  ["the transaction is aborted", aborting("UnknownError"), "storage-lost"],
] as const;

describe.each(cases)("when %s", (_story, trouble, code) => {
  test.each([0, 1, 2])("keeps no half of a batch after %i of its entries were put", async (whole) => {
    const signer = await newSigner();
    const { journal, writer } = await begin(signer, crypto.randomUUID());
    await writer.append([began], stampAt(0));
    troubleAfter(whole, trouble);
    const failed = await writer.append(threeFacts, stampAt(10));
    vi.restoreAllMocks();
    const read = await journal.read(sampleSession);
    expect(!failed.ok && failed.code).toBe(code);
    expect(read.ok && read.kept.entries.map((entry) => entry.n)).toEqual([1]);
    const retried = await writer.append(threeFacts, stampAt(20));
    expect(retried.ok && retried.entries.map((entry) => entry.n)).toEqual([2, 3, 4]);
  });
});

test.each(cases)(
  "when %s, keeps neither a note's sound nor its fact, and the next note is kept",
  async (_story, trouble, code) => {
    const signer = await newSigner();
    const { journal, writer } = await begin(signer, crypto.randomUUID());
    await writer.append([began], stampAt(0));
    const { note, attachment } = attachmentOf(new Uint8Array([1, 2, 3]));
    const fact = { type: "v1.NoteKept", note, lengthMs: 300, witnessedMs: 0, cause: 1 } as const;
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(function (this: IDBObjectStore, value: unknown) {
      if (this.name === "personal") trouble(this);
      return put.call(this, value);
    });
    writer.attach(note, attachment);
    const failed = await writer.append([fact], stampAt(10));
    vi.restoreAllMocks();
    const notes = async () => {
      const read = await journal.read(sampleSession);
      return read.ok && [read.kept.entries.length, read.kept.personal.filter(({ n }) => n > 0).length];
    };
    expect(!failed.ok && failed.code).toBe(code);
    expect(await notes()).toEqual([1, 0]);
    writer.attach(note, attachment);
    expect((await writer.append([fact], stampAt(20))).ok).toBe(true);
    expect(await notes()).toEqual([2, 1]);
  },
);

test("writes every batch in one strict transaction and answers after it is complete", async () => {
  const signer = await newSigner();
  const { writer } = await begin(signer, crypto.randomUUID());
  const original = IDBDatabase.prototype.transaction;
  let complete = false;
  const transaction = vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (
    this: IDBDatabase,
    ...given: Parameters<IDBDatabase["transaction"]>
  ) {
    const tx = original.apply(this, given);
    tx.addEventListener("complete", () => {
      complete = true;
    });
    return tx;
  });
  await writer.append(threeFacts, stampAt(10));
  expect(complete).toBe(true);
  expect(transaction.mock.calls.map((call) => [call[1], call[2]])).toEqual([["readwrite", { durability: "strict" }]]);
});

test("refuses a second page while the first holds the session's lock", async () => {
  const locks = scriptedLocks();
  const name = crypto.randomUUID();
  const signer = await newSigner();
  const { writer } = await begin(signer, name, locks);
  const otherPage = indexedDbJournal(signer, { name, locks });
  const refused = await otherPage.resume(sampleSession);
  await writer.release();
  const taken = await otherPage.resume(sampleSession);
  expect(!refused.ok && refused.code).toBe("other-writer");
  expect(taken.ok).toBe(true);
});

test("fences off the first page once a second has taken the pen, where there are no locks", async () => {
  const name = crypto.randomUUID();
  const signer = await newSigner();
  const { writer } = await begin(signer, name);
  const second = await indexedDbJournal(signer, { name }).resume(sampleSession);
  const late = await writer.append([began], stampAt(0));
  expect(second.ok).toBe(true);
  expect(!late.ok && late.code).toBe("other-writer");
});

test("tells that what is kept was altered on the disk", async () => {
  const name = crypto.randomUUID();
  const signer = await newSigner();
  const { journal, writer } = await begin(signer, name);
  await writer.append([began, done("wash", 1)], stampAt(0));
  await alterEntry(name, 1, { at: stampAt(1).at });
  const read = await journal.read(sampleSession);
  expect(read).toMatchObject({ ok: false, code: "damaged", message: "Entry 2: broken-link." });
});

test("keeps one key for the device, whoever asks first, and never lets it out", async () => {
  const name = crypto.randomUUID();
  const signers = await Promise.all([deviceSigner(name), deviceSigner(name)]);
  const again = await deviceSigner(name);
  const kept = await storedKey(name);
  expect(new Set([...signers, again].map((signer) => signer.publicKey)).size).toBe(1);
  await expect(crypto.subtle.exportKey("pkcs8", kept.privateKey)).rejects.toThrow();
});

/** Web Locks in a few lines: a lock is held until its callback's promise ends. */
function scriptedLocks(): LockManager {
  const held = new Set<string>();
  const request = async (name: string, _options: LockOptions, act: (lock: Lock | null) => unknown) => {
    if (held.has(name)) return act(null);
    held.add(name);
    const ended = act({ name, mode: "exclusive" });
    await ended;
    held.delete(name);
    return ended;
  };
  return { request, query: async () => ({}) } as unknown as LockManager;
}

const requested = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

async function alterEntry(name: string, n: number, change: object) {
  const db = await requested(indexedDB.open(name));
  const store = db.transaction("entries", "readwrite").objectStore("entries");
  const row = await requested(store.get([sampleSession, n]));
  await requested(store.put({ ...row, entry: { ...row.entry, ...change } }));
  db.close();
}

async function storedKey(name: string): Promise<CryptoKeyPair> {
  const db = await requested(indexedDB.open(name));
  const pair = await requested(db.transaction("keys").objectStore("keys").get("device"));
  db.close();
  return pair;
}
