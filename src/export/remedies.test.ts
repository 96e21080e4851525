/** What the summary says was done about a deviation: only what a later fact tells. */
import { expect, test } from "vitest";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { attachmentOf, makeClosing, newSigner } from "../log";
import { recordOf, recordText } from "./recordFile";
import { live, noteEvent, toneWav } from "./samples/lived";
import { remade } from "./samples/remake";
import { wholeSession } from "./samples/wholeSession";
import { summarise } from "./summarise";
import { passes } from "./verdict";
import { verifyRecord } from "./verifyRecord";

const input = inputFor(smallProtocol);
const signer = await newSigner();
const deviationsOf = async (events: readonly SessionEvent[]) => {
  const { kept } = await live(input, events, signer);
  return summarise(input, kept.entries).deviations;
};
const doneAbout = async (code: string, events: readonly SessionEvent[] = wholeSession) =>
  (await deviationsOf(events)).filter((one) => one.code === code).map((one) => one.done?.what ?? null);

test("a lamp touched with soiled gloves was disinfected later", async () => {
  expect(await doneAbout("touchedUnplanned")).toContain("disinfected");
});

test("a surface wiped early was wetted again and stayed wet", async () => {
  expect(await doneAbout("wipedEarly")).toEqual(["disinfected"]);
});

test("a step left out and never done has no remedy", async () => {
  expect(await doneAbout("stepLeftOut")).toEqual([null]);
});

test("names the entry that tells", async () => {
  const { kept } = await live(input, wholeSession, signer);
  const [early] = summarise(input, kept.entries).deviations.filter((one) => one.code === "wipedEarly");
  expect(kept.entries[(early?.done?.n ?? 0) - 1]?.fact).toMatchObject({ type: "v1.WetClockReady", surface: "lamp" });
});

test("a session cut off before the remedy has none", async () => {
  const cut = wholeSession.slice(0, wholeSession.findIndex((event) => event.type === "surface.wiped") + 1);
  expect(await doneAbout("wipedEarly", cut)).toEqual([null]);
});

test("a count that differs to the end is not put right by its explanation", async () => {
  const confirms = wholeSession.findIndex((event, at) => event.type === "answer.confirm" && at > 20);
  const differs = wholeSession.flatMap((event, at): SessionEvent[] =>
    at === confirms
      ? [
          { type: "sharps.counted", inContainer: 0 },
          { type: "sharps.counted", inContainer: 0 },
          { type: "sharps.explained", reason: "lost" },
        ]
      : [event],
  );
  expect(await doneAbout("sharpsMismatch", differs)).toEqual([null]);
});

test("a record of rules 1.0.0 has none, and still follows from its facts", async () => {
  const { kept } = await live(input, wholeSession, signer);
  const old = recordOf({ ...kept, header: { ...kept.header, rules: "1.0.0" } });
  const record = await remade(old, signer);
  expect(record.closing?.summary.deviations.every((one) => one.done === undefined)).toBe(true);
  expect(record.closing?.summary.notes).toBeUndefined();
  expect(passes(await verifyRecord(recordText(record)))).toBe(true);
});

test("a record of rules 1.2.0 does not name its notes, and still follows from its facts", async () => {
  const note = attachmentOf(toneWav);
  const { kept } = await live(input, [...wholeSession.slice(0, 3), noteEvent(note)], signer, [note]);
  const [now, before] = await Promise.all(
    ["1.3.0", "1.2.0"].map((rules) => remade(recordOf({ ...kept, header: { ...kept.header, rules } }), signer)),
  );
  expect(now?.closing?.summary.notes).toMatchObject([{ lengthMs: 250 }]);
  expect(before?.closing?.summary.notes).toBeUndefined();
  for (const record of [now, before]) expect(record && passes(await verifyRecord(recordText(record)))).toBe(true);
});

test("a remedy that no fact tells is found by replay, even signed", async () => {
  const { kept } = await live(input, wholeSession, signer);
  const record = await remade(recordOf(kept), signer);
  const skipped = record.closing?.summary.deviations.find((one) => one.code === "stepLeftOut");
  Object.assign(skipped ?? {}, { done: { what: "doneLater", n: 9 } });
  const { entries, signatures } = record;
  const summary = record.closing?.summary;
  if (!summary) throw new Error("not sealed");
  const head = record.closing?.seal.head ?? "";
  const closing = await makeClosing({ entries, signatures, head }, summary, "2026-11-25T11:00:00.000+00:00", signer);
  const verdict = await verifyRecord(recordText({ ...record, closing }));
  expect([verdict.intact.ok, verdict.signedBy.ok]).toEqual([true, true]);
  expect(verdict.follows).toMatchObject({ code: "summary-differs", at: { part: "summary" } });
});
