/**
 * Records whose facts are as they were, hashed, signed and sealed anew by the device's own key, with a summary that says
 * otherwise: every figure and word of it changed, every line left out, doubled or exchanged, one at a time.
 */
import { expect, test } from "vitest";
import { busyDay, sealedRecord } from "../../../tests/support/papers";
import { attachmentOf, makeClosing, newSigner, Summary } from "../../log";
import { Protocol } from "../../session/protocol";
import { type RecordFile, recordText } from "../recordFile";
import { noteEvent, toneWav } from "../samples/lived";
import { passes } from "../verdict";
import { verifyRecord } from "../verifyRecord";

const signer = await newSigner();
const notes = [attachmentOf(toneWav), attachmentOf(toneWav)] as const;
const { input: ordinary, day } = busyDay();
/** So that something can be left out, too. */
const protocol = Protocol.parse({
  ...ordinary.protocol,
  setUp: ordinary.protocol.setUp.map((step) => ({ ...step, skippable: true })),
});
const input = { ...ordinary, protocol };
const { record } = await sealedRecord(
  input,
  {
    ...day,
    atWork: [
      { type: "time.gap", why: "sleep" },
      { type: "event.reported", event: "newNeedle" },
      { type: "event.reported", event: "touched", item: "chair" },
      { type: "report.undo" },
      { type: "session.close" },
      { type: "event.reported", event: "freshGloves" },
      { type: "item.outOfUse", item: "powerSupply" },
    ],
    at: {
      12: { type: "step.skip" },
      20: noteEvent(notes[0]),
      24: noteEvent(notes[1]),
      160: { type: "exposure.reported" },
    },
  },
  signer,
  notes,
);
const told = record.closing?.summary;
if (!told) throw new Error("the record is not sealed");

type Forged = { readonly where: string; readonly summary: Summary };

/** Another value of the same kind, for each of those that the schema may take. */
function others(value: unknown): readonly unknown[] {
  if (typeof value === "number") return [value + 1, ...(value > 0 ? [value - 1] : [])];
  if (typeof value === "boolean") return [!value];
  const words = [
    "ended",
    "resumed",
    "closed",
    "endedByExposure",
    "unfinished",
    "ready",
    "dried",
    "procedure",
    "setUp",
    "dropped",
    "wipedEarly",
    "lost",
  ];
  const more = ["miscounted", "noStock", "notForClient", "reload", "notNow", "discarded", "recounted", "photo", "said"];
  const texts = [...words, ...more, "scanned", "chair-2", "2026-11-25T09:00:00.000+00:00", "2031-01-31"];
  return [...texts, null, 7].filter((other) => other !== value);
}

/** Every change at one place: most once, so that one place does not crowd out the others. */
function* changed(value: unknown): Generator<readonly [string, unknown]> {
  if (Array.isArray(value)) {
    for (const [at, one] of value.entries()) {
      yield [`[${at}] left out`, value.toSpliced(at, 1)];
      for (const [where, other] of changed(one)) yield [`[${at}]${where}`, value.with(at, other)];
    }
    if (value.length > 0) yield ["[0] doubled", [value[0], ...value]];
    if (value.length > 1) yield ["[0] and [1] exchanged", [value[1], value[0], ...value.slice(2)]];
  } else if (typeof value === "object" && value !== null) {
    for (const [name, one] of Object.entries(value)) {
      for (const [where, other] of changed(one)) yield [`.${name}${where}`, { ...value, [name]: other }];
    }
    yield [" none", null];
  } else for (const other of others(value)) yield ["", other];
}

function forgeriesOf(field: keyof Summary): readonly Forged[] {
  const found = new Map<string, Forged>();
  for (const [where, value] of changed(told?.[field])) {
    const read = Summary.safeParse({ ...told, [field]: value });
    const isOther = JSON.stringify(value) !== JSON.stringify(told?.[field]);
    const place = `${field}${where}`;
    if (read.success && isOther && !found.has(place)) found.set(place, { where: place, summary: read.data });
  }
  return [...found.values()];
}

const fields = Object.keys(Summary.shape) as readonly (keyof Summary)[];
const all = fields.map((field) => [field, forgeriesOf(field)] as const);

async function forged(summary: Summary): Promise<string> {
  const { entries, signatures } = record;
  const head = record.closing?.seal.head ?? "";
  const closing = await makeClosing({ entries, signatures, head }, summary, "2026-11-25T18:00:00.000+00:00", signer);
  return recordText({ ...record, closing } satisfies RecordFile);
}

test("the same summary, sealed anew, passes", async () => {
  expect(passes(await verifyRecord(await forged(told)))).toBe(true);
});

test("there are far more than fifty of them, and some for each part of a summary", () => {
  expect(all.filter(([, forgeries]) => forgeries.length === 0).map(([field]) => field)).toEqual([]);
  expect(all.flatMap(([, forgeries]) => forgeries).length).toBeGreaterThan(250);
});

test.each(all)("finds every forgery of the summary's %s, by replay alone", async (_field, forgeries) => {
  for (const { where, summary } of forgeries) {
    const { intact, signedBy, follows } = await verifyRecord(await forged(summary));
    expect([intact.ok, signedBy.ok], where).toEqual([true, true]);
    expect(follows, where).toMatchObject({ ok: false, code: "summary-differs", at: { part: "summary" } });
  }
});
