/** The part of the bench that runs in Chromium, on a real IndexedDB: strict appends, and a lot among 10,000 sessions. */
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { archive } from "../../finding/archive";
import { everything } from "../../finding/query";
import { clientIn, indexedDbJournal, newSigner, uuidv7 } from "../../log";
import { rowFrom } from "../../log/findingRow";
import { logDatabase } from "../../log/logDatabase";
import { openingFor, stampOf } from "./lived";

const sessions = 10_000;
const dayMs = 86_400_000;
const openingOf = (at: number, key: string) => {
  const lots = [{ item: "needle", lot: `N-${at % 2000}`, expiry: null, known: "typed" as const }];
  return openingFor(inputFor(smallProtocol, { lots }), key, uuidv7(Date.UTC(2020, 0, 1) + (at * dayMs) / 5));
};

async function appends(): Promise<number[]> {
  const signer = await newSigner();
  const opened = await indexedDbJournal(signer, { name: "bench-append" }).open(openingOf(0, signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  const taken: number[] = [];
  for (let cause = 0; cause < 500; cause++) {
    const start = performance.now();
    const fact = { type: "v1.TimeWitnessed", witnessedMs: 10_000, cause } as const;
    const kept = await opened.writer.append([fact], stampOf({ by: "clock" }, cause * 10_000));
    if (!kept.ok) throw new Error(kept.message);
    taken.push(performance.now() - start);
  }
  return taken;
}

/** @returns milliseconds by the index and by looking at every session, and how many each found. */
async function search() {
  const name = "bench-search";
  const { publicKey } = await newSigner();
  const db = await logDatabase(name).open();
  for (let from = 0; from < sessions; from += 500) {
    const tx = db.transaction(["sessions", "finding"], "readwrite");
    for (let at = from; at < from + 500; at++) {
      const { header, personal } = openingOf(at, publicKey);
      const { session } = header;
      const row = { session, header, head: "", count: 0, state: "open" as const, order: at, pen: "", signature: "" };
      void tx.objectStore("sessions").put({ ...row, closing: null });
      void tx.objectStore("finding").put(rowFrom(header, clientIn(header, personal), [], null));
    }
    await tx.done;
  }
  const index = archive(name);
  const byIndex = async () => {
    const found = await index.find({ ...everything, lot: "N-1234" });
    return found.ok ? found.rows.length : -1;
  };
  const plain = async () =>
    (await db.getAll("sessions")).filter(({ header }) => header.input.lots.some(({ lot }) => lot === "N-1234")).length;
  return { byIndex: await timed(byIndex, 21), plain: await timed(plain, 3) };
}

async function timed(act: () => Promise<number>, times: number) {
  const found = await act();
  const taken: number[] = [];
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    await act();
    taken.push(performance.now() - start);
  }
  return { found, taken };
}

Object.assign(globalThis, { bench: { appends, search } });
