/** Runs in the page: fills the archive with invented records, then asks it by its index and by a plain look at each. */
import { openingFor } from "../../src/export/samples/lived";
import { archive } from "../../src/finding/archive";
import { everything } from "../../src/finding/query";
import { clientIn, uuidv7 } from "../../src/log";
import { lotKey, rowFrom } from "../../src/log/findingRow";
import { logDatabase } from "../../src/log/logDatabase";
import { anySummary } from "../../src/log/samples/smallSession";
import type { Closing } from "../../src/log/seal";
import { conventionBooth } from "../../src/session/protocols/conventionBooth";
import { inputFor } from "../support/session";

const name = "bench";
const { open } = logDatabase(name);
const kept = archive(name);
const sealBody = {
  sealedAt: "2026-11-25T23:00:00.000+00:00",
  entries: 1,
  head: "0".repeat(64),
  summary: "0".repeat(64),
};
const seal = { ...sealBody, signatures: "0".repeat(64), signature: "0".repeat(128) };
const lotOf = (n: number): string => `N-${String(n).padStart(4, "0")}`;

/** Sealed sessions of a bundled protocol; every lot was used by ten of them. */
async function seed(count: number): Promise<number> {
  const db = await open();
  const input = inputFor(conventionBooth);
  const lotItem = conventionBooth.items.find((item) => item.hasLot)?.id ?? "";
  let bytes = 0;
  for (let from = 0; from < count; from += 250) {
    const tx = db.transaction(["sessions", "finding"], "readwrite", { durability: "relaxed" });
    for (let n = from; n < Math.min(count, from + 250); n++) {
      const session = uuidv7(Date.UTC(2020, 0, 1) + n * 3_600_000);
      const lot = { item: lotItem, lot: lotOf(n % (count / 10)), expiry: "2028-01-31", known: "typed" as const };
      const { header, personal } = openingFor(
        { ...input, lots: [lot], clientReference: `C-${n}` },
        "0".repeat(64),
        session,
      );
      const closing: Closing = { summary: { ...anySummary, lots: [{ n: null, ...lot }] }, seal };
      const row = { session, header, head: seal.head, count: 1, state: "sealed" as const, order: n + 1 };
      if (n === 0) bytes = JSON.stringify({ header, closing }).length;
      void tx.objectStore("sessions").put({ ...row, pen: "", signature: "", closing });
      void tx.objectStore("finding").put(rowFrom(header, clientIn(header, personal), [], closing));
    }
    await tx.done;
  }
  return bytes;
}

async function byIndex(lot: string): Promise<number> {
  const found = await kept.find({ ...everything, lot });
  return found.ok ? found.rows.length : -1;
}

/** What there is without an index: every session read, its summary looked through. */
async function plain(lot: string): Promise<number> {
  const db = await open();
  let cursor = await db.transaction("sessions").store.openCursor();
  let found = 0;
  while (cursor) {
    const { closing } = cursor.value;
    if (closing?.summary.lots.some((one) => lotKey(one.lot).startsWith(lotKey(lot)))) found += 1;
    cursor = await cursor.continue();
  }
  return found;
}

/** The same in runs of 500, the quickest plain way we know. */
async function plainInRuns(lot: string): Promise<number> {
  const db = await open();
  let found = 0;
  let after: string | undefined;
  for (;;) {
    const range = after === undefined ? null : IDBKeyRange.lowerBound(after, true);
    const rows = await db.getAll("sessions", range, 500);
    for (const { closing } of rows)
      if (closing?.summary.lots.some((one) => lotKey(one.lot).startsWith(lotKey(lot)))) found += 1;
    after = rows.at(-1)?.session;
    if (rows.length < 500) return found;
  }
}

async function timed(how: (lot: string) => Promise<number>, times: number, lots: number) {
  const taken: number[] = [];
  let found = 0;
  for (let i = 0; i < times; i++) {
    const startMs = performance.now();
    found = await how(lotOf((i * 37) % lots));
    taken.push(performance.now() - startMs);
  }
  return { taken, found };
}

Object.assign(globalThis, {
  seed,
  byIndex: (times: number, lots: number) => timed(byIndex, times, lots),
  plain: (times: number, lots: number) => timed(plain, times, lots),
  plainInRuns: (times: number, lots: number) => timed(plainInRuns, times, lots),
});
