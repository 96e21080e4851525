/** The archive over an invented store: what the index answers is what a plain look at every record would. */
import "fake-indexeddb/auto";
import { fc } from "@fast-check/vitest";
import { openDB } from "idb";
import { describe, expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { openingFor } from "../export/samples/lived";
import { readCsv } from "../export/samples/readCsv";
import { type Header, indexedDbJournal, makeClosing, newSigner, uuidv7 } from "../log";
import { rowFrom } from "../log/findingRow";
import { logDatabase } from "../log/logDatabase";
import { anySummary, began, stampAt } from "../log/samples/smallSession";
import { Protocol } from "../session/protocol";
import type { Lot, SessionInput } from "../session/sessionInput";
import { archive } from "./archive";
import { foundCsv } from "./foundCsv";
import { answers, everything, inOrder, type Query } from "./query";

const signer = await newSigner();
const needle = (lot: string): Lot => ({ item: "needle", lot, expiry: "2028-01-31", known: "typed" });
const dayMs = 86_400_000;
const firstMs = Date.UTC(2026, 0, 10, 12);

interface Kept {
  readonly client?: string;
  readonly lots?: readonly string[];
  readonly day?: number;
  readonly given?: string;
  readonly isDropped?: boolean;
  readonly isSealed?: boolean;
  readonly input?: Partial<SessionInput>;
}

/** Keeps a session through the real journal, as the app does. */
async function keep(name: string, { client = "C-1", lots = [], day = 0, given, isDropped, isSealed, ...more }: Kept) {
  const journal = indexedDbJournal(signer, { name });
  const input = inputFor(smallProtocol, { clientReference: client, lots: lots.map(needle), ...more.input });
  const opening = openingFor(input, signer.publicKey, uuidv7(firstMs + day * dayMs));
  const opened = await journal.open(opening);
  if (!opened.ok) throw new Error(opened.message);
  const { writer } = opened;
  await writer.append([began], stampAt(0));
  if (given !== undefined) {
    const fact = { type: "v1.LotGiven", item: "needle", lot: given, expiry: null, witnessedMs: 0, cause: 1 } as const;
    await writer.append([fact], stampAt(10));
  }
  if (isDropped) {
    const fact = { type: "v1.Deviation", code: "dropped", item: "lamp", step: null, witnessedMs: 0, cause: 2 } as const;
    await writer.append([fact], stampAt(20));
  }
  if (isSealed) {
    const read = await journal.read(writer.session);
    if (!read.ok) throw new Error(read.message);
    const summary = {
      ...anySummary,
      lots: [...input.lots.map((lot) => ({ n: null, ...lot }))],
      deviations: isDropped ? [{ n: 2, code: "dropped" as const, item: "lamp", step: null, takenBack: false }] : [],
    };
    await writer.finish(await makeClosing(read.kept, summary, "2026-11-25T23:00:00.000+00:00", signer));
  } else await writer.release();
  return writer.session;
}

const name = () => crypto.randomUUID();
const found = async (db: string, query: Partial<Query>): Promise<readonly string[]> => {
  const answer = await archive(db).find({ ...everything, ...query });
  if (!answer.ok) throw new Error(answer.message);
  return answer.rows.map(({ session }) => session);
};

describe("which sessions used a lot", () => {
  test("is told for lots typed before and given during the session, sealed or not, newest first", async () => {
    const db = name();
    const first = await keep(db, { lots: ["N-204"], isSealed: true });
    await keep(db, { lots: ["N-300"], day: 1 });
    const third = await keep(db, { given: "N-204", day: 2 });
    expect(await found(db, { lot: "N-204" })).toEqual([third, first]);
  });

  test("does not mind case, spaces and dashes, and finds it by its beginning", async () => {
    const db = name();
    const one = await keep(db, { lots: ["n 204/7"] });
    for (const lot of ["N-204-7", "N2047", "n204", "N-20"]) expect(await found(db, { lot })).toEqual([one]);
    expect(await found(db, { lot: "204" })).toEqual([]);
  });

  test("a lot of signs alone is found as it stands", async () => {
    const db = name();
    const one = await keep(db, { lots: ["--"] });
    await keep(db, { lots: ["N-1"] });
    expect(await found(db, { lot: "--" })).toEqual([one]);
  });
});

test("sessions are found by product, days, deviation and client, and by several at once", async () => {
  const db = name();
  const first = await keep(db, { client: "Blue 7", day: 0, isDropped: true, isSealed: true });
  const second = await keep(db, { client: "Blue 8", day: 1, lots: ["N-1"], isDropped: true });
  const third = await keep(db, { client: "Red 1", day: 40 });
  expect(await found(db, {})).toEqual([third, second, first]);
  expect(await found(db, { product: "DISINFECTANT a" })).toEqual([third, second, first]);
  expect(await found(db, { product: "needle" })).toEqual([second]);
  expect(await found(db, { product: "soap" })).toEqual([]);
  expect(await found(db, { from: "2026-01-10", to: "2026-01-11" })).toEqual([second, first]);
  expect(await found(db, { from: "2026-01-11" })).toEqual([third, second]);
  expect(await found(db, { to: "2026-01-10" })).toEqual([first]);
  expect(await found(db, { from: "2026-01-15", to: "2026-01-14" })).toEqual([]);
  expect(await found(db, { deviation: "dropped" })).toEqual([second, first]);
  expect(await found(db, { client: "blue" })).toEqual([second, first]);
  expect(await found(db, { client: "blue", deviation: "dropped", to: "2026-01-10" })).toEqual([first]);
});

test("a thing is found by its name in any language that the protocol has, and told in that of the session", async () => {
  const db = name();
  const spanish = Protocol.parse({
    ...smallProtocol,
    items: smallProtocol.items.map((item) =>
      item.id === "needle" ? { ...item, name: { en: "needle", es: "aguja" } } : item,
    ),
  });
  const session = await keep(db, { lots: ["N-1"], input: { protocol: spanish, language: "es" } });
  expect(await found(db, { product: "aguja" })).toEqual([session]);
  expect(await found(db, { product: "needle" })).toEqual([session]);
  const answer = await archive(db).find(everything);
  expect(answer.ok && answer.rows[0]?.lots).toMatchObject([{ name: "aguja", lot: "N-1" }]);
});

test("the index answers as a plain look at every row would, whatever is asked", async () => {
  const db = name();
  for (let day = 0; day < 12; day++) {
    await keep(db, {
      ...{ client: `C-${day % 3}`, lots: day % 2 ? [`N-${day % 4}`] : [], day, isDropped: day % 5 === 0 },
      isSealed: day % 3 === 0,
    });
  }
  const all = await archive(db).find(everything);
  const rows = all.ok ? all.rows : [];
  expect(rows.length).toBe(12);
  const asked = fc.record({
    lot: fc.constantFrom("", "N", "n-1", "N-3", "x"),
    product: fc.constantFrom("", "needle", "surface"),
    from: fc.constantFrom("", "2026-01-12", "2026-01-15"),
    to: fc.constantFrom("", "2026-01-14", "2026-01-30"),
    deviation: fc.constantFrom("", "dropped", "wipedEarly"),
    client: fc.constantFrom("", "c-1", "C"),
  });
  await fc.assert(
    fc.asyncProperty(asked, async (query) => {
      const plain = inOrder(rows.filter((row) => answers(row, query))).map(({ session }) => session);
      expect(await found(db, query)).toEqual(plain);
    }),
    { numRuns: 200 },
  );
});

test("an index that was lost is made again from the log, row for row", async () => {
  const db = name();
  await keep(db, { lots: ["N-204"], isSealed: true, isDropped: true });
  await keep(db, { given: "N-300", isDropped: true, day: 1 });
  const opened = await logDatabase(db).open();
  const before = await opened.getAll("finding");
  await opened.clear("finding");
  expect(await archive(db).mend()).toEqual({ ok: true, made: 2 });
  expect(await opened.getAll("finding")).toEqual(before);
  const kept = await opened.getAll("sessions");
  expect(kept.map(({ header, closing }) => rowFrom(header, { state: "none" }, [], closing).session)).toEqual(
    before.map(({ session }) => session),
  );
});

test("a log of the first version, without an index, is taken over with everything in it", async () => {
  const db = name();
  const old = await openDB(db, 1, {
    upgrade: (made) => {
      const sessions = made.createObjectStore("sessions", { keyPath: "session" });
      sessions.createIndex("order", "order", { unique: true });
      sessions.createIndex("state", ["state", "order"]);
      sessions.createIndex("station", ["header.input.station", "order"]);
      made.createObjectStore("entries", { keyPath: ["session", "n"] });
    },
  });
  const input = inputFor(smallProtocol, { lots: [needle("N-204")] });
  const { client: _client, ...second } = openingFor(input, signer.publicKey).header as Extract<
    Header,
    { formatVersion: 2 }
  >;
  const header = { ...second, formatVersion: 1 as const, input: { ...second.input, clientReference: "C-1" } };
  const row = { session: header.session, header, head: "", count: 0, pen: "", signature: "", closing: null };
  await old.put("sessions", { ...row, state: "open", order: 1 });
  old.close();
  expect(await found(db, { lot: "N-204" })).toEqual([header.session]);
  expect(await found(db, { client: "C-1" })).toEqual([header.session]);
});

test("the table of what was found is RFC 4180, and what looks like a formula is inert in it", async () => {
  const db = name();
  await keep(db, { client: '=HYPERLINK("x")', lots: ["+1", 'N"2'] });
  const answer = await archive(db).find(everything);
  const rows = readCsv(foundCsv(answer.ok ? answer.rows : []));
  expect(rows[0]?.slice(0, 3)).toEqual(["day", "client", "station"]);
  expect(rows[1]?.[0]).toBe("2026-01-10");
  expect(rows[1]?.[1]).toBe('\'=HYPERLINK("x")');
  expect(rows[1]?.[5]).toBe('needle +1 (2028-01-31); needle N"2 (2028-01-31)');
});
