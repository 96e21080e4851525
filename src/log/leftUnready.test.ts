/** What a station was left with, over an invented store. The model is the slow way: every session, newest first. */
import "fake-indexeddb/auto";
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { begun, inputFor, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { penHere } from "../app/openSession";
import { restore } from "../backup/restore";
import { writeBackup } from "../backup/writeBackup";
import { sealRecord } from "../export";
import { openingFor } from "../export/samples/lived";
import { indexedDbJournal } from "./indexedDbJournal";
import { openLeftUnready } from "./leftUnready";
import { logDatabase } from "./logDatabase";
import { newSigner } from "./signing";
import { uuidv7 } from "./uuidv7";
import { openVault } from "./vault";
import { wallTime } from "./wallTime";

const signer = await newSigner();
const passphrase = "nine green bottles";
const work = 1_000;
const done: SessionEvent = { type: "step.done" };
const closing: readonly SessionEvent[] = [
  { type: "exposure.reported" },
  { type: "answer.yes" },
  { type: "answer.confirm" },
  { type: "session.close" },
  { type: "answer.confirm" },
];
/** Five steps of the set-up, then the session ends by an accident with gloves on and everything covered. */
const brokenOff = [done, done, done, done, done, ...closing];

function studio(name: string = crypto.randomUUID()) {
  const vault = openVault(name, work);
  const journal = indexedDbJournal(signer, { name, vault });
  const hold = async (station: string, events: readonly SessionEvent[] = brokenOff) => {
    const input = inputFor(smallProtocol, { station });
    const opened = await journal.open(openingFor(input, signer.publicKey, uuidv7()));
    if (!opened.ok) return expect.fail(opened.message);
    const { writer } = opened;
    await penHere(writer).append(told(begun(input), ...events).facts, { by: "keyboard" });
    const seal = () => sealRecord(journal, writer, signer, wallTime(Date.now()));
    return { session: writer.session, seal };
  };
  return { name, vault, journal, hold, left: openLeftUnready(name) };
}

describe("what a station was left with", () => {
  it("is what its newest sealed record says was not ready, each station's own", async () => {
    const { hold, left } = studio();
    await (await hold("Station 1")).seal();
    await (await hold("Station 2")).seal();
    const unready = ["chair", "lamp", "cup"];
    expect(await left()).toEqual({ ok: true, left: { "Station 1": unready, "Station 2": unready } });
  });

  it("is not guessed from a session that still goes on, and is known once that one is sealed", async () => {
    const { hold, left } = studio();
    const goesOn = await hold("Station 1");
    expect(await left()).toEqual({ ok: true, left: {} });
    await goesOn.seal();
    expect(await left()).toMatchObject({ left: { "Station 1": ["chair", "lamp", "cup"] } });
  });

  it("is known while the records are locked", async () => {
    const { hold, left, vault } = studio();
    await (await hold("Station 1")).seal();
    await vault.begin(passphrase);
    vault.close();
    expect(await left()).toMatchObject({ left: { "Station 1": ["chair", "lamp", "cup"] } });
  });

  it("is what an older session says that came in with a restored backup, where newer ones say nothing", async () => {
    const old = studio();
    await (await old.hold("Station 1")).seal();
    const sources = { journal: old.journal, rows: async () => [], protocols: () => [] };
    const written = await writeBackup(sources, passphrase, undefined, work);
    if (!written.ok) return expect.fail(written.message);
    const { name, hold, left } = studio();
    await hold("Station 1");
    expect(await left()).toEqual({ ok: true, left: {} });
    await restore(written.file, passphrase, async () => undefined, undefined, name);
    expect(await left()).toMatchObject({ left: { "Station 1": ["chair", "lamp", "cup"] } });
  });

  it("says so where the store does not answer", async () => {
    const { name } = studio();
    const db = await logDatabase(name).open();
    const ahead = indexedDB.open(name, db.version + 1);
    await new Promise((opened) => {
      ahead.onsuccess = opened;
    });
    expect(await openLeftUnready(name)()).toMatchObject({ ok: false, code: "storage-lost" });
  });

  it("reads no session twice, so that a start costs the same after years", async () => {
    const { name, hold, left } = studio();
    for (let n = 0; n < 3; n += 1) await (await hold("Station 1")).seal();
    const first = await left();
    const db = await logDatabase(name).open();
    // What is read again would be told by this.
    for (const row of await db.getAll("sessions")) {
      if (!row.closing) return expect.fail("not sealed");
      const summary = { ...row.closing.summary, closed: { balanced: true, unready: ["floor"] } };
      await db.put("sessions", { ...row, closing: { ...row.closing, summary } });
    }
    expect(await left()).toEqual(first);
  });
});

const things = ["chair", "lamp", "cup"] as const;
const session = fc.record({
  station: fc.constantFrom("A", "B"),
  items: fc.uniqueArray(fc.constantFrom(...things), { minLength: 1 }),
  soiled: fc.array(fc.constantFrom(...things)),
  end: fc.constantFrom("sealed", "without a word", "open", "sealed later"),
  isReadAfter: fc.boolean(),
});

property.prop([fc.array(session, { maxLength: 8 })], { numRuns: 60 })(
  "is the same whenever it was read before: the newest word on each thing",
  async (lived) => {
    const name = crypto.randomUUID();
    const left = openLeftUnready(name);
    const db = await logDatabase(name).open();
    const rows = lived.map(({ station, items, soiled, end }, at) => {
      const unready = items.filter((item) => soiled.includes(item));
      const closed = end === "without a word" ? null : { balanced: true, unready };
      const header = { input: { station, protocol: { items: items.map((id) => ({ id })) } } };
      return { ...{ session: `s${at}`, order: at + 1, header, end }, closing: { summary: { closed } } };
    });
    const put = ({ end, ...row }: (typeof rows)[number], isLater: boolean) => {
      const isOpen = end === "open" || (end === "sealed later" && !isLater);
      const kept = { ...row, state: isOpen ? "open" : "sealed", closing: isOpen ? null : row.closing };
      return db.put("sessions", kept as never);
    };
    for (const [at, row] of rows.entries()) {
      await put(row, false);
      if (lived[at]?.isReadAfter) await left();
    }
    for (const row of rows) await put(row, true);

    const expected: Record<string, string[]> = {};
    const dealt = new Set<string>();
    for (const { header, closing, end } of rows.toReversed()) {
      const { station, protocol } = header.input;
      if (end === "open" || !closing.summary.closed) continue;
      const { unready } = closing.summary.closed;
      const ids = protocol.items.map(({ id }) => id);
      const of = (id: string) => `${station}/${id}`;
      expected[station] = [...(expected[station] ?? []), ...unready.filter((id) => !dealt.has(of(id)))];
      for (const id of ids) dealt.add(of(id));
    }
    const told = await left();
    const sorted = (all: Readonly<Record<string, readonly string[]>>) =>
      Object.fromEntries(Object.entries(all).map(([station, ids]) => [station, [...ids].sort()]));
    expect(told.ok && sorted(told.left)).toEqual(sorted(expected));
  },
);
