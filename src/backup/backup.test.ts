/** A backup and its restore over the real journal in an invented store; then everything that may be wrong with a file. */
import "fake-indexeddb/auto";
import { gzipSync } from "node:zlib";
import { beforeAll, describe, expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { recordOf } from "../export/recordFile";
import { openingFor, toneWav } from "../export/samples/lived";
import { archive } from "../finding/archive";
import { everything } from "../finding/query";
import { attachmentOf, indexedDbJournal, makeClosing, newSigner, uuidv7 } from "../log";
import { logDatabase } from "../log/logDatabase";
import { anySummary, began, done, stampAt } from "../log/samples/smallSession";
import type { Change } from "../studio/kinds";
import { locking, pieceBytes } from "./container";
import { packed } from "./packing";
import { restore, settle } from "./restore";
import { writeBackup } from "./writeBackup";

const passphrase = "nine green bottles";
/** Far fewer rounds than in use: what is tested is not how slow a guess is. */
const work = 1_000;
const signer = await newSigner();
const newName = () => crypto.randomUUID();
const nobody = async () => undefined;
const tool: Change = {
  kind: "steriliser",
  id: "s1",
  value: { id: "s1", name: "Autoclave A", hasVacuum: true, lastBowieDick: null, events: [] },
};

/** A device with one sealed and one unfinished session; facts enough to fill more than one piece of a file. */
async function lived(facts = 12) {
  const name = newName();
  const journal = indexedDbJournal(signer, { name });
  for (const [at, isSealed] of [true, false].entries()) {
    const lots = [{ item: "needle", lot: `N-${at}`, expiry: null, known: "typed" as const }];
    const input = inputFor(smallProtocol, { lots, clientReference: `C-${at}` });
    const opening = openingFor(input, signer.publicKey, uuidv7(Date.UTC(2026, 0, 1 + at)));
    const opened = await journal.open(opening);
    if (!opened.ok) throw new Error(opened.message);
    const { writer } = opened;
    await writer.append([began], stampAt(0));
    const note = attachmentOf(toneWav);
    writer.attach(note.note, note.attachment);
    const kept = { type: "v1.NoteKept", note: note.note, lengthMs: 250, witnessedMs: 0, cause: 1 } as const;
    await writer.append([kept], stampAt(1));
    for (let cause = 2; cause < facts; cause++) await writer.append([done("washHands", cause)], stampAt(cause));
    const read = await journal.read(writer.session);
    if (!read.ok) throw new Error(read.message);
    if (isSealed) {
      const summary = {
        ...anySummary,
        lots: [{ n: null, ...lots[0], item: "needle", lot: `N-${at}`, expiry: null, known: "typed" as const }],
      };
      await writer.finish(await makeClosing(read.kept, summary, "2026-11-25T23:00:00.000+00:00", signer));
    } else await writer.release();
  }
  const sources = { journal, rows: async () => [tool], protocols: () => [JSON.stringify(smallProtocol)] };
  return { name, journal, sources };
}

type Device = Awaited<ReturnType<typeof lived>>;
let device: Device;
let file: Blob;

const backedUp = async ({ sources }: Device): Promise<Blob> => {
  const written = await writeBackup(sources, passphrase, undefined, work);
  if (!written.ok) throw new Error(written.message);
  return written.file;
};
/** Everything that is on the disk of a device. */
const onDisk = async (name: string) => {
  const db = await logDatabase(name).open();
  const stores = ["sessions", "entries", "finding", "staged", "personal"] as const;
  return Object.fromEntries(await Promise.all(stores.map(async (store) => [store, await db.getAll(store)])));
};
const nothing = { sessions: [], entries: [], finding: [], staged: [], personal: [] };

beforeAll(async () => {
  device = await lived();
  file = await backedUp(device);
});

test("a restored device has every session, fact, signature and seal, can find them, and is handed the studio's rows", async () => {
  const name = newName();
  const handed: unknown[] = [];
  const restored = await restore(file, passphrase, async (...others) => void handed.push(others), undefined, name);
  expect(restored).toEqual({ ok: true, counts: { sessions: 2, rows: 1, protocols: 1 }, alreadyHere: 0 });
  expect(handed).toEqual([[[tool], [JSON.stringify(smallProtocol)]]]);
  const here = indexedDbJournal(signer, { name });
  const listed = await device.journal.all();
  const again = await here.all();
  const withoutOrder = (all: typeof again) => all.ok && all.sessions.map(({ order: _order, ...session }) => session);
  expect(withoutOrder(again)).toEqual(withoutOrder(listed));
  for (const { session } of listed.ok ? listed.sessions : []) {
    expect(await here.read(session)).toEqual(await device.journal.read(session));
  }
  const found = await archive(name).find({ ...everything, lot: "N-1" });
  expect(found.ok && found.rows.map(({ client }) => client)).toEqual(["C-1"]);
});

test("clients' references and spoken notes come back with their sessions; what was erased before stays erased", async () => {
  const here = await lived(3);
  const listed = await here.journal.all();
  const [one, other] = listed.ok ? listed.sessions : [];
  await here.journal.erase(one?.session ?? "", [0, 2]);
  const name = newName();
  await restore(await backedUp(here), passphrase, nobody, undefined, name);
  const restored = indexedDbJournal(signer, { name });
  const parts = async (session = "") => {
    const read = await restored.read(session);
    return read.ok && read.kept.personal.map((part) => [part.n, "erased" in part]);
  };
  expect([await parts(one?.session), await parts(other?.session)]).toEqual([
    [
      [0, true],
      [2, true],
    ],
    [
      [0, false],
      [2, false],
    ],
  ]);
});

test("an older backup does not bring back what was erased here since", async () => {
  const here = await lived(3);
  const older = await backedUp(here);
  const listed = await here.journal.all();
  for (const { session } of listed.ok ? listed.sessions : []) await here.journal.erase(session, [0, 2]);
  const before = await onDisk(here.name);
  expect(await restore(older, passphrase, nobody, undefined, here.name)).toMatchObject({ ok: true, alreadyHere: 2 });
  expect(await onDisk(here.name)).toEqual(before);
});

test("nothing of it stands in the clear, and no key of the device is in it", async () => {
  const text = Buffer.from(await file.arrayBuffer()).toString("latin1");
  for (const word of ["C-0", "needle", "header", signer.publicKey, "private"]) expect(text).not.toContain(word);
  expect(text.split("\n")[0]).toContain('"rounds":1000');
});

test("with real work a guess costs 600,000 rounds", async () => {
  const written = await writeBackup(device.sources, passphrase);
  expect(written.ok && (await written.file.slice(0, 400).text())).toContain('"rounds":600000');
});

test("restored twice it changes nothing the second time", async () => {
  const name = newName();
  await restore(file, passphrase, nobody, undefined, name);
  const before = await onDisk(name);
  expect(await restore(file, passphrase, nobody, undefined, name)).toMatchObject({ ok: true, alreadyHere: 2 });
  expect(await onDisk(name)).toEqual(before);
});

test("what a device lived through itself stays the newest, and its next session is chained to that", async () => {
  const here = await lived(3);
  const own = await here.journal.all();
  const head = await here.journal.lastHead("Station 1");
  expect(await restore(file, passphrase, nobody, undefined, here.name)).toMatchObject({ ok: true, alreadyHere: 0 });
  expect(await here.journal.lastHead("Station 1")).toEqual(head);
  const all = await here.journal.all();
  expect(all.ok && all.sessions.slice(0, 2)).toEqual(own.ok && own.sessions);
  expect(all.ok && all.sessions.length).toBe(4);
});

test("another session under a number that is here already is refused, and the good ones beside it with it", async () => {
  const listed = await device.journal.all();
  const taken = (listed.ok && listed.sessions[0]?.session) || "";
  const other = indexedDbJournal(signer, { name: newName() });
  for (const session of [taken, uuidv7()]) {
    const opened = await other.open(
      openingFor(inputFor(smallProtocol, { clientReference: "X" }), signer.publicKey, session),
    );
    if (opened.ok) await opened.writer.append([began], stampAt(0));
  }
  const written = await writeBackup({ ...device.sources, journal: other }, passphrase, undefined, work);
  const before = await onDisk(device.name);
  const answer = await restore(written.ok ? written.file : file, passphrase, nobody, undefined, device.name);
  expect(answer).toMatchObject({ ok: false, code: "other-record" });
  expect(await onDisk(device.name)).toEqual(before);
});

test("a session of another device's key cannot be taken up here, and is not offered", async () => {
  const name = newName();
  await restore(file, passphrase, nobody, undefined, name);
  const stranger = indexedDbJournal(await newSigner(), { name });
  expect(await stranger.unfinished()).toEqual({ ok: true, sessions: [] });
  const all = await stranger.all();
  expect(all.ok && all.sessions.length).toBe(2);
});

describe("a file that is not as it should be is refused whole, and nothing is changed", () => {
  const refused = async (bytes: Blob | Uint8Array<ArrayBuffer>, secret = passphrase) => {
    const name = newName();
    const answer = await restore(bytes instanceof Blob ? bytes : new Blob([bytes]), secret, nobody, undefined, name);
    expect(answer.ok).toBe(false);
    expect(await onDisk(name)).toEqual(nothing);
    return answer.ok ? "" : answer.code;
  };
  const bytes = async () => new Uint8Array(await file.arrayBuffer());

  test("another passphrase", async () => expect(await refused(file, "nine green bottle")).toBe("wrong-passphrase"));
  test("an empty file", async () => expect(await refused(new Uint8Array(0))).toBe("not-a-backup"));
  test("200 MB of zeros, of which a kilobyte is read", async () => {
    let read = 0;
    class Counted extends Blob {
      override slice(from = 0, to = this.size): Blob {
        read += to - from;
        return super.slice(from, to);
      }
    }
    const large = new Counted(Array.from({ length: 200 }, () => new Uint8Array(1_000_000)));
    expect(await refused(large)).toBe("not-a-backup");
    expect(read).toBe(1_024);
  });
  test("200 MB behind a right first line", async () => {
    const line = new TextEncoder().encode(`${(await file.text()).split("\n")[0]}\n`);
    const rest = Array.from({ length: 200 }, () => new Uint8Array(1_000_000).fill(255));
    expect(await refused(new Blob([line, ...rest]))).toBe("wrong-passphrase");
  });
  test("a newer format", async () => {
    const text = JSON.stringify({ format: "gloveside-backup", formatVersion: 2 });
    expect(await refused(new Blob([`${text}\n`]))).toBe("newer-format");
  });
  test("work without end asked of the key", async () => {
    const all = await bytes();
    const text = new TextDecoder("latin1")
      .decode(all.slice(0, all.indexOf(10)))
      .replace('"rounds":1000', '"rounds":1e12');
    expect(await refused(new Blob([`${text}\n`, all.slice(all.indexOf(10) + 1)]))).toBe("not-a-backup");
  });
  test("fewer rounds written into it", async () => {
    const all = await bytes();
    const text = new TextDecoder("latin1")
      .decode(all.slice(0, all.indexOf(10)))
      .replace('"rounds":1000', '"rounds":1001');
    expect(await refused(new Blob([`${text}\n`, all.slice(all.indexOf(10) + 1)]))).toBe("wrong-passphrase");
  });
  test("any one byte altered, tried at 120 places", async () => {
    const all = await bytes();
    for (let i = 0; i < 120; i++) {
      const copy = all.slice();
      const at = Math.floor((i * (all.length - 1)) / 119);
      copy[at] = (copy[at] ?? 0) ^ 1;
      await refused(copy);
    }
  });
  test("cut off at 60 places", async () => {
    const all = await bytes();
    for (let i = 0; i < 60; i++) await refused(all.slice(0, Math.floor((i * all.length) / 60)));
  });
  test("with bytes behind its end", async () => {
    await refused(new Blob([await bytes(), new Uint8Array(40)]));
  });
});

/** Made with the right passphrase by somebody who means harm. */
async function forged(...lines: readonly string[]): Promise<Blob> {
  async function* all() {
    yield* lines;
  }
  return sealed(packed(all()));
}
async function sealed(plain: AsyncIterable<Uint8Array>): Promise<Blob> {
  const parts: BlobPart[] = [];
  for await (const part of locking(plain, passphrase, work)) parts.push(part);
  return new Blob(parts);
}
const end = (sessions: number, rows = 0) => JSON.stringify({ kind: "end", sessions, rows, protocols: 0 });

describe("a hostile file under the right passphrase is refused whole", () => {
  const refused = async (bytes: Blob) => {
    const name = newName();
    const answer = await restore(bytes, passphrase, nobody, undefined, name);
    expect(await onDisk(name)).toEqual(nothing);
    return answer.ok ? "restored" : answer.code;
  };
  const sessionLine = async (change: (record: Record<string, unknown>) => void) => {
    const listed = await device.journal.all();
    const read = await device.journal.read((listed.ok && listed.sessions[1]?.session) || "");
    if (!read.ok) throw new Error(read.message);
    const record = structuredClone(recordOf(read.kept)) as unknown as Record<string, unknown>;
    change(record);
    return JSON.stringify({ kind: "session", record });
  };

  test("the same file unharmed is taken", async () => {
    const name = newName();
    const same = await forged(await sessionLine(() => undefined), end(1));
    expect(await restore(same, passphrase, nobody, undefined, name)).toMatchObject({ ok: true });
  });
  test("a bomb that packs a gigabyte into one megabyte", async () => {
    const bomb = gzipSync(Buffer.alloc(100_000_000));
    async function* packedBomb() {
      yield new Uint8Array(bomb);
    }
    expect(bomb.length).toBeLessThan(100_000);
    expect(await refused(await sealed(packedBomb()))).toBe("too-large");
  });
  test("what is not packed at all", async () => {
    async function* noise() {
      yield crypto.getRandomValues(new Uint8Array(5_000));
    }
    expect(await refused(await sealed(noise()))).toBe("not-a-backup");
  });
  test("a record with one fact altered", async () => {
    const line = await sessionLine((record) => {
      for (const entry of (record.entries as { monoMs: number }[]).slice(3, 4)) entry.monoMs += 1;
    });
    expect(await refused(await forged(line, end(1)))).toBe("not-verified");
  });
  test("a good record before a bad one", async () => {
    const good = await sessionLine(() => undefined);
    const bad = await sessionLine((record) => {
      (record.header as { appVersion: string }).appVersion = "9.9.9";
    });
    expect(await refused(await forged(good, bad, end(2)))).toBe("not-verified");
  });
  test.each(["__proto__", "constructor", "prototype"])("names that reach for %s", async (key) => {
    const line = (await sessionLine(() => undefined)).replace('"record":{', `"record":{"${key}":{"polluted":true},`);
    expect(await refused(await forged(line, end(1)))).toBe("not-verified");
    const row = `{"kind":"row","row":{"kind":"steriliser","id":"s1","value":{"${key}":{"polluted":true}}}}`;
    expect(await refused(await forged(row, end(0, 1)))).toBe("not-verified");
    const kind = `{"kind":"row","row":{"kind":"${key}","id":"s1","value":{}}}`;
    expect(await refused(await forged(kind, end(0, 1)))).toBe("not-verified");
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
  test.each([
    ["no JSON", ["not json", end(0)]],
    ["no end", [JSON.stringify({ kind: "protocol", text: "{}" })]],
    ["a count that does not fit", [end(3)]],
    ["a line behind its end", [end(0), end(0)]],
    ["a protocol that is none", [JSON.stringify({ kind: "protocol", text: "{}" }), end(0)]],
    ["nesting without end", [`${"[".repeat(200_000)}`, end(0)]],
    ["nothing", []],
  ])("%s", async (_, lines) => {
    expect(await refused(await forged(...lines))).toBe("not-verified");
  });
});

test("a device that is full in the middle of it has what it had", async () => {
  const name = newName();
  const add = IDBObjectStore.prototype.add;
  let writes = 0;
  IDBObjectStore.prototype.add = function (...args: Parameters<typeof add>) {
    writes += 1;
    if (writes > 12) throw new DOMException("no room", "QuotaExceededError");
    return add.apply(this, args);
  };
  const answer = await restore(file, passphrase, nobody, undefined, name);
  IDBObjectStore.prototype.add = add;
  expect(answer).toMatchObject({ ok: false, code: "storage-full" });
  expect(await onDisk(name)).toEqual(nothing);
});

test("killed before it was moved over, what was read is cleared away at the next beginning", async () => {
  const name = newName();
  const db = await logDatabase(name).open();
  await db.add("staged", { kind: "row", row: tool });
  const handed: unknown[] = [];
  await settle(async (rows) => void handed.push(rows), name);
  expect(handed).toEqual([]);
  expect(await onDisk(name)).toEqual(nothing);
});

test("killed after it was moved over, the studio's rows are handed over at the next beginning", async () => {
  const name = newName();
  const db = await logDatabase(name).open();
  await db.add("staged", { kind: "row", row: tool });
  await db.add("staged", { kind: "moved" });
  const handed: unknown[] = [];
  await settle(async (rows) => void handed.push(rows), name);
  expect(handed).toEqual([[tool]]);
  expect(await onDisk(name)).toEqual(nothing);
});

test("more than one piece of a file goes there and back, and pieces exchanged are refused", async () => {
  async function* random() {
    for (let i = 0; i < 5; i++) yield crypto.getRandomValues(new Uint8Array(60_000)).map((byte) => byte);
    yield new Uint8Array(pieceBytes * 2);
  }
  const whole = new Uint8Array(await (await sealed(random())).arrayBuffer());
  const start = whole.indexOf(10) + 1;
  const framed = pieceBytes + 16 + 4;
  const swapped = whole.slice();
  swapped.set(whole.slice(start, start + framed), start + framed);
  swapped.set(whole.slice(start + framed, start + 2 * framed), start);
  const answer = await restore(new Blob([swapped]), passphrase, nobody, undefined, newName());
  expect(answer).toMatchObject({ ok: false, code: "wrong-passphrase" });
});
