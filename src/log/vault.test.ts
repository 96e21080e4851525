/** The lock of the records over an invented store: nothing readable is left lying, and work goes on without the passphrase. */
import "fake-indexeddb/auto";
import { describe, expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { restore } from "../backup/restore";
import { writeBackup } from "../backup/writeBackup";
import { sealRecord, verifyRecord } from "../export";
import { openingFor } from "../export/samples/lived";
import { archive } from "../finding/archive";
import { everything } from "../finding/query";
import { indexedDbJournal } from "./indexedDbJournal";
import { logDatabase } from "./logDatabase";
import { began, stampAt } from "./samples/smallSession";
import { newSigner } from "./signing";
import { uuidv7 } from "./uuidv7";
import { openVault } from "./vault";

const signer = await newSigner();
const passphrase = "nine green bottles";
const work = 1_000;
let minute = 0;

function device(name = crypto.randomUUID(), vault = openVault(name, work)) {
  const journal = indexedDbJournal(signer, { name, vault });
  const begin = async (client: string, lot: string) => {
    const last = await journal.lastHead("Station 1");
    const lots = [{ item: "needle", lot, expiry: "2028-01-31", known: "typed" as const }];
    const input = inputFor(smallProtocol, { clientReference: client, lots });
    const opening = openingFor(input, signer.publicKey, uuidv7(Date.UTC(2026, 0, 10) + 60_000 * ++minute));
    const previousHead = last.ok ? last.head : null;
    const opened = await journal.open({ ...opening, header: { ...opening.header, previousHead } });
    if (!opened.ok) throw new Error(opened.message);
    await opened.writer.append([began], stampAt(0));
    return opened.writer;
  };
  const hold = async (client: string, lot: string) => {
    const writer = await begin(client, lot);
    const sealed = await sealRecord(journal, writer, signer, "2026-11-25T23:00:00.000+00:00");
    if (!sealed.ok) throw new Error(sealed.message);
    await vault.tidy();
    return { session: writer.session, text: sealed.text };
  };
  return { name, vault, journal, begin, hold };
}

/** Everything that lies on the disk, bytes as text, as somebody with the device in hand would search it. */
async function lying(name: string): Promise<string> {
  const db = await logDatabase(name).open();
  const all = await Promise.all([...db.objectStoreNames].map((store) => db.getAll(store)));
  return JSON.stringify(all, (_key, value) =>
    ArrayBuffer.isView(value)
      ? Buffer.from(value.buffer, value.byteOffset, value.byteLength).toString("latin1")
      : value,
  );
}
const clientsFound = async (at: ReturnType<typeof device>, lot = "") => {
  const found = await archive(at.name, at.vault).find({ ...everything, lot });
  return found.ok ? { clients: found.rows.map(({ client }) => client), locked: found.locked } : found;
};

describe("a lock that is set", () => {
  test("leaves nothing of a sealed session readable, of those before it as of those after", async () => {
    const one = device();
    await one.hold("Client before", "N-204");
    expect(await lying(one.name)).toMatch(/Client before.*|N-204/);
    expect(await one.vault.begin(passphrase)).toEqual({ ok: true });
    await one.hold("Client after", "N-305");
    const onDisk = await lying(one.name);
    for (const text of ["Client before", "Client after", "N-204", "N-305", "Artist A", "v1.SessionBegan"]) {
      expect(onDisk).not.toContain(text);
    }
  });

  test("lets sessions be written, taken up and sealed while nobody knows the passphrase", async () => {
    const one = device();
    await one.vault.begin(passphrase);
    one.vault.close();
    const first = await one.hold("C-1", "N-204");
    const writer = await one.begin("C-2", "N-204");
    await writer.release();
    const again = device(one.name, openVault(one.name, work));
    const resumed = await again.journal.resume(writer.session);
    expect(resumed.ok && resumed.kept.header.previousHead).toBe(JSON.parse(first.text).closing.seal.head);
    expect(
      resumed.ok && (await sealRecord(again.journal, resumed.writer, signer, "2026-11-25T23:00:00.000+00:00")).ok,
    ).toBe(true);
    await again.vault.tidy();
    expect(await again.vault.state()).toEqual({ at: "locked", away: 2, unread: 2, waiting: 0 });
    expect(await lying(one.name)).not.toContain("C-2");
  });

  test("refuses to read a record, and says that what was found is not all", async () => {
    const one = device();
    const { session } = await one.hold("C-1", "N-204");
    await one.vault.begin(passphrase);
    one.vault.close();
    expect(await one.journal.read(session)).toMatchObject({ ok: false, code: "records-locked" });
    expect(await clientsFound(one, "N-204")).toEqual({ clients: [], locked: 1 });
    expect((await one.journal.all()).ok).toBe(true);
  });

  test("opens with its passphrase and no other: the very record, and found by its lot", async () => {
    const one = device();
    await one.vault.begin(passphrase);
    const { session, text } = await one.hold("C-1", "N-204");
    await one.hold("C-2", "N-305");
    const later = device(one.name, openVault(one.name, work));
    expect(await later.vault.unlock("nine green bottle")).toMatchObject({ code: "wrong-passphrase" });
    expect(await later.vault.unlock(passphrase)).toEqual({ ok: true });
    expect(await clientsFound(later, "N-204")).toEqual({ clients: ["C-1"], locked: 0 });
    const read = await later.journal.read(session);
    expect(read.ok && read.kept.closing).toEqual(JSON.parse(text).closing);
    const listed = await later.journal.all();
    expect(listed.ok && listed.sessions.map(({ client }) => client)).toEqual([
      { state: "kept", reference: "C-2" },
      { state: "kept", reference: "C-1" },
    ]);
    later.vault.close();
    expect(await clientsFound(later)).toEqual({ clients: [], locked: 2 });
  });
});

test("a kill between seal and lock leaves a whole record, which the next start puts away", async () => {
  const one = device();
  await one.vault.begin(passphrase);
  const unlocking = device(one.name, { ...openVault(one.name, work), tidy: async () => undefined });
  const { session, text } = await unlocking.hold("C-1", "N-204");
  expect(await unlocking.vault.state()).toMatchObject({ away: 0, waiting: 1 });
  expect((await verifyRecord(text)).intact).toMatchObject({ ok: true });
  const next = device(one.name, openVault(one.name, work));
  await next.vault.tidy();
  expect(await next.vault.state()).toMatchObject({ away: 1, waiting: 0 });
  expect(await next.journal.read(session)).toMatchObject({ code: "records-locked" });
});

test("putting away twice at once does it once", async () => {
  const one = device();
  const { session } = await one.hold("C-1", "N-204");
  await one.vault.begin(passphrase);
  await one.vault.bringBack(session);
  await Promise.all([one.vault.tidy(), one.vault.tidy(), openVault(one.name, work).tidy()]);
  expect(await one.vault.state()).toMatchObject({ away: 1, waiting: 0 });
  expect((await one.journal.read(session)).ok).toBe(true);
});

test("another passphrase opens from then on, and the old one no more; nothing locked is touched", async () => {
  const one = device();
  await one.hold("C-1", "N-204");
  await one.vault.begin(passphrase);
  const away = async () => (await logDatabase(one.name).open()).getAll("away");
  const before = await away();
  expect(await one.vault.change("wrong words", "four other words")).toMatchObject({ code: "wrong-passphrase" });
  expect(await one.vault.change(passphrase, "four other words")).toEqual({ ok: true });
  const later = openVault(one.name, work);
  expect(await later.unlock(passphrase)).toMatchObject({ code: "wrong-passphrase" });
  expect(await later.unlock("four other words")).toEqual({ ok: true });
  expect(await away()).toEqual(before);
});

test("forgotten, a new lock takes what is sealed from now on; the old records open should the passphrase come back", async () => {
  const one = device();
  await one.vault.begin(passphrase);
  await one.hold("C-1", "N-204");
  const later = device(one.name, openVault(one.name, work));
  await later.vault.begin("four other words");
  await later.hold("C-2", "N-204");
  expect(await clientsFound(later)).toEqual({ clients: ["C-2"], locked: 1 });
  expect(await later.vault.unlock(passphrase)).toEqual({ ok: true });
  expect(await clientsFound(later)).toEqual({ clients: ["C-2", "C-1"], locked: 0 });
});

test("taken off, everything lies as it did, row for row", async () => {
  const one = device();
  await one.hold("C-1", "N-204");
  await one.hold("C-2", "N-305");
  const before = await lying(one.name);
  await one.vault.begin(passphrase);
  expect(await lying(one.name)).not.toContain("N-305");
  await one.vault.end();
  expect(await one.vault.state()).toEqual({ at: "none", away: 0, unread: 0, waiting: 0 });
  expect(await lying(one.name)).toBe(before);
});

test("a lock whose key is not there is not taken off", async () => {
  const one = device();
  await one.hold("C-1", "N-204");
  await one.vault.begin(passphrase);
  one.vault.close();
  await one.vault.end();
  expect(await one.vault.state()).toMatchObject({ at: "locked", away: 1 });
});

test("a client's reference is erased under the lock once it is open, and not before", async () => {
  const one = device();
  await one.vault.begin(passphrase);
  const { session } = await one.hold("C-1", "N-204");
  one.vault.close();
  expect(await one.journal.erase(session, [0])).toMatchObject({ code: "records-locked" });
  await one.vault.unlock(passphrase);
  expect(await one.journal.erase(session, [0])).toEqual({ ok: true });
  expect(await one.vault.state()).toMatchObject({ away: 1, waiting: 0 });
  expect(await clientsFound(one)).toEqual({ clients: [""], locked: 0 });
  const read = await one.journal.read(session);
  expect(read.ok && read.kept.personal).toEqual([{ n: 0, erased: true }]);
});

test("a row altered on the disk does not open as if it were whole", async () => {
  const one = device();
  await one.vault.begin(passphrase);
  const { session } = await one.hold("C-1", "N-204");
  const db = await logDatabase(one.name).open();
  const row = await db.get("away", session);
  if (row) await db.put("away", { ...row, unready: ["lamp"] });
  expect((await one.journal.read(session)).ok).toBe(false);
});

describe("backups and the lock", () => {
  const sources = (at: ReturnType<typeof device>) => ({
    journal: at.journal,
    vault: at.vault,
    rows: async () => [],
    protocols: () => [],
  });
  const nobody = async () => undefined;

  test("unlocked, everything goes into a backup; restored there again, nothing is doubled and all is put away", async () => {
    const one = device();
    await one.vault.begin(passphrase);
    const { session } = await one.hold("C-1", "N-204");
    const written = await writeBackup(sources(one), "another passphrase", undefined, work);
    if (!written.ok) throw new Error(written.message);
    expect(written.counts.sessions).toBe(1);
    const back = await restore(written.file, "another passphrase", nobody, undefined, one.name, one.vault);
    expect(back).toMatchObject({ ok: true, alreadyHere: 1 });
    const other = device();
    await other.vault.begin("four other words");
    const there = await restore(written.file, "another passphrase", nobody, undefined, other.name, other.vault);
    expect(there).toMatchObject({ ok: true, alreadyHere: 0 });
    expect(await lying(other.name)).not.toContain("N-204");
    expect((await other.journal.read(session)).ok).toBe(true);
  });

  test("locked, neither is begun", async () => {
    const one = device();
    await one.vault.begin(passphrase);
    await one.hold("C-1", "N-204");
    const open = await writeBackup(sources(one), "another passphrase", undefined, work);
    if (!open.ok) throw new Error(open.message);
    one.vault.close();
    expect(await writeBackup(sources(one), "another passphrase", undefined, work)).toMatchObject({
      ok: false,
      code: "records-locked",
    });
    const back = await restore(open.file, "another passphrase", nobody, undefined, one.name, one.vault);
    expect(back).toMatchObject({ ok: false, code: "records-locked" });
  });
});
