import "fake-indexeddb/auto";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { tempFolder } from "../../tests/support/tempFolder";
import { passes, recordOf, recordText, verifyRecord } from "../export";
import { openingFor, toneWav } from "../export/samples/lived";
import { archive } from "../finding/archive";
import { everything } from "../finding/query";
import { fileJournal } from "./fileJournal";
import { indexedDbJournal, type Journal, newSigner, uuidv7 } from "./index";
import { logDatabase } from "./logDatabase";
import { attachmentOf, bytesOfBase64, clientIn, type PersonalPart } from "./personal";
import { began, stampAt } from "./samples/smallSession";

const signer = await newSigner();
const reference = "Kundin Nr. 77-Ω";
const input = inputFor(smallProtocol, { clientReference: reference });
const noteKept = ({ note }: ReturnType<typeof attachmentOf>, cause: number) =>
  ({ type: "v1.NoteKept", note, lengthMs: 250, witnessedMs: 0, cause }) as const;

/** A session with its client and one spoken note. */
async function kept(journal: Journal) {
  const opened = await journal.open(openingFor(input, signer.publicKey, uuidv7()));
  if (!opened.ok) throw new Error(opened.message);
  const { writer } = opened;
  const note = attachmentOf(toneWav);
  writer.attach(note.note, note.attachment);
  await writer.append([began], stampAt(0));
  const answer = await writer.append([noteKept(note, 1)], stampAt(500));
  if (!answer.ok) throw new Error(answer.message);
  return { writer, note };
}
const read = async (journal: Journal, session: string) => {
  const found = await journal.read(session);
  if (!found.ok) throw new Error(found.message);
  return found.kept;
};

const stores = [
  [
    "IndexedDB",
    async () => {
      const name = crypto.randomUUID();
      const everyByte = async () => {
        const db = await logDatabase(name).open();
        return JSON.stringify(await Promise.all([...db.objectStoreNames].map((store) => db.getAll(store))));
      };
      return { journal: indexedDbJournal(signer, { name }), everyByte };
    },
  ],
  [
    "files",
    async () => {
      const folder = tempFolder("personal");
      const everyByte = async () => {
        const names = await readdir(folder);
        return (await Promise.all(names.map((name) => readFile(join(folder, name), "utf8")))).join("\n");
      };
      return { journal: fileJournal(folder, signer), everyByte };
    },
  ],
] as const;

describe.each(stores)("the client's part of a session in %s", (_kind, make) => {
  test("stands beside the chain, and both give the session back whole", async () => {
    const { journal } = await make();
    const { writer, note } = await kept(journal);
    const { header, personal } = await read(journal, writer.session);
    expect(JSON.stringify(header)).not.toContain(reference);
    expect(clientIn(header, personal)).toEqual({ state: "kept", reference });
    expect(personal[1]).toEqual({ n: 2, ...note.attachment });
  });

  test("is nowhere in the store after it was erased, and the record verifies as before", async () => {
    const { journal, everyByte } = await make();
    const { writer, note } = await kept(journal);
    const before = await read(journal, writer.session);
    const salt = (before.personal[0] as Extract<PersonalPart, { salt: string }>).salt;
    expect(await everyByte()).toContain(reference);
    expect(await journal.erase(writer.session, [0, 2])).toEqual({ ok: true });
    const bytes = await everyByte();
    for (const gone of [reference, reference.toLowerCase(), salt, note.attachment.salt, note.attachment.wav])
      expect(bytes).not.toContain(gone);
    const after = await read(journal, writer.session);
    const verdict = await verifyRecord(recordText(recordOf(after)), { acceptUnfinished: true });
    expect([passes(verdict), verdict.personal]).toEqual([
      true,
      { client: "erased", notes: { kept: 0, erased: 1, notIncluded: 0 } },
    ]);
    expect(after.head).toBe(before.head);
  });

  test("can be erased from a session that goes on, and it goes on", async () => {
    const { journal } = await make();
    const { writer } = await kept(journal);
    await journal.erase(writer.session, [0]);
    expect(await writer.append([{ ...began, cause: 2 }], stampAt(900))).toMatchObject({ ok: true });
    const listed = await journal.all();
    expect(listed.ok && listed.sessions[0]?.client).toEqual({ state: "erased" });
  });

  test("a note is kept with its fact or not at all: a fact without its sound is refused", async () => {
    const { journal } = await make();
    const { writer, note } = await kept(journal);
    const answer = await writer.append([noteKept(note, 2)], stampAt(900));
    expect(answer).toMatchObject({ ok: false, code: "not-a-fact" });
    writer.attach(note.note, attachmentOf(toneWav).attachment);
    expect(await writer.append([noteKept(note, 2)], stampAt(900))).toMatchObject({ ok: false, code: "not-a-fact" });
    expect((await read(journal, writer.session)).entries.length).toBe(2);
  });
});

test("a client is found by the reference that is kept, and no longer by one that was erased", async () => {
  const name = crypto.randomUUID();
  const journal = indexedDbJournal(signer, { name });
  const { writer } = await kept(journal);
  const found = async () => {
    const answer = await archive(name).find({ ...everything, client: "kundin nr." });
    return answer.ok && answer.rows.map(({ session }) => session);
  };
  expect(await found()).toEqual([writer.session]);
  await journal.erase(writer.session, [0]);
  expect(await found()).toEqual([]);
  const anew = archive(name);
  await anew.mend(true);
  expect(await found()).toEqual([]);
  const all = await anew.find(everything);
  expect(all.ok && all.rows.map(({ client, clientState }) => [client, clientState])).toEqual([["", "erased"]]);
});

property.prop([fc.string({ minLength: 1, maxLength: 60 })], { numRuns: 50 })(
  "two records of the same client cannot be linked by their commitments",
  (clientReference) => {
    const [one, other] = [1, 2].map(() => openingFor({ ...input, clientReference }, signer.publicKey).header);
    expect(one?.formatVersion === 2 && other?.formatVersion === 2 && one.client !== other.client).toBe(true);
  },
);

property.prop([fc.string({ minLength: 1, maxLength: 60 }), fc.string({ minLength: 1, maxLength: 60 })], {
  numRuns: 50,
})("another reference beside the chain is found, and so is another salt", async (given, other) => {
  fc.pre(given.isWellFormed() && other.isWellFormed() && given !== other);
  const { header, personal } = openingFor({ ...input, clientReference: given }, signer.publicKey);
  const [part] = personal;
  const found = async (forged: object) => {
    const record = { header, entries: [], signatures: ["0".repeat(128)], closing: null };
    const text = recordText({ ...record, personal: [{ ...part, ...forged } as PersonalPart] });
    const { intact } = await verifyRecord(text, { acceptUnfinished: true });
    return intact.ok ? null : intact.code;
  };
  expect(await found({})).toBeNull();
  expect(await found({ text: other })).toBe("personal-differs");
  expect(await found({ salt: "0".repeat(64) })).toBe("personal-differs");
});

test("a header that was given no reference has no commitment", () => {
  const { clientReference: _reference, ...nobody } = input;
  const { header, personal } = openingFor(nobody, signer.publicKey);
  expect([clientIn(header, personal), personal]).toEqual([{ state: "none" }, []]);
});

test("a journal refuses a reference that is not what the header commits to", async () => {
  const { header, personal } = openingFor(input, signer.publicKey);
  const forged = personal.map((part) => ({ ...part, text: "C-2" }) as PersonalPart);
  const answer = await indexedDbJournal(signer, { name: crypto.randomUUID() }).open({ header, personal: forged });
  expect(answer).toMatchObject({ ok: false, code: "not-a-fact" });
});

test("base64 that spells the same bytes otherwise is not the same file (RFC 4648 section 3.5)", () => {
  expect(bytesOfBase64("QQ==")).toEqual(Uint8Array.of(0x41));
  for (const other of ["QR==", "QQ", "QQ=", " QQ==", "Q!=="]) expect(bytesOfBase64(other)).toBeNull();
});
