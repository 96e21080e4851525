import { describe, expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { attachmentOf, type LogEntry, makeClosing, newSigner } from "../log";
import { type RecordFile, recordOf, recordText } from "./recordFile";
import { live, noteEvent, toneWav } from "./samples/lived";
import { remade } from "./samples/remake";
import { wholeSession } from "./samples/wholeSession";
import { sealRecord } from "./sealRecord";
import { summarise } from "./summarise";
import { inWords, passes } from "./verdict";
import { verifyRecord } from "./verifyRecord";

const input = inputFor(smallProtocol);
const signer = await newSigner();
const { journal, writer, kept } = await live(input, wholeSession, signer);
const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealed.ok) throw new Error(sealed.message);
const { record, text } = sealed;

const verified = async (change: (copy: RecordFile) => unknown) => {
  const copy = structuredClone(record);
  change(copy);
  return verifyRecord(recordText(copy));
};
/** Where and how the first fault of "intact" stands. */
const intactly = async (change: (copy: RecordFile) => unknown) => {
  const { intact } = await verified(change);
  return intact.ok ? "intact" : `${intact.code} at ${inWords(intact.at)}`;
};
const entryOf = (copy: RecordFile, n: number) => copy.entries[n - 1] as LogEntry;

test("passes a record as it was sealed, and says by which key", async () => {
  const verdict = await verifyRecord(new TextEncoder().encode(text), { trusted: [signer.publicKey] });
  expect(verdict).toMatchObject({
    intact: { ok: true, entries: record.entries.length, sealed: true },
    signedBy: { ok: true, key: signer.publicKey, trusted: true },
    follows: { ok: true },
  });
  expect(passes(verdict)).toBe(true);
});

test("does not pass a record of a key that is not among the trusted", async () => {
  const verdict = await verifyRecord(text, { trusted: [(await newSigner()).publicKey] });
  expect(verdict.signedBy).toMatchObject({ ok: true, trusted: false });
  expect(passes(verdict)).toBe(false);
});

test("is sealed once: sealing again gives the same record", async () => {
  const again = await sealRecord(journal, writer, signer, "2026-12-25T11:00:00.000+00:00");
  expect(again.ok && again.text).toBe(text);
});

describe("finds", () => {
  test.each([1, 2, 17, record.entries.length])("entry %i altered", async (n) => {
    expect(await intactly((copy) => Object.assign(entryOf(copy, n), { monoMs: 999_999 }))).toBe(
      `altered-entry at entry ${n}`,
    );
  });

  test.each([2, 17, record.entries.length])("the link of entry %i altered", async (n) => {
    expect(await intactly((copy) => Object.assign(entryOf(copy, n), { prev: "ab".repeat(32) }))).toBe(
      `altered-link at entry ${n}`,
    );
  });

  test("the header altered", async () => {
    expect(await intactly((copy) => Object.assign(copy.header.input, { artist: "Artist B" }))).toBe(
      "altered-header at header",
    );
  });

  test.each([1, 17, record.entries.length - 1])("entry %i removed, with its signature", async (n) => {
    const cut = (copy: RecordFile) => [copy.entries.splice(n - 1, 1), copy.signatures.splice(n, 1)];
    expect(await intactly(cut)).toBe(`wrong-number at entry ${n}`);
  });

  test("the end cut off, with its signatures", async () => {
    const cut = (copy: RecordFile) => [copy.entries.splice(20), copy.signatures.splice(21)];
    expect(await intactly(cut)).toBe("entries-missing at entry 21");
  });

  test.each([1, 17])("entry %i doubled", async (n) => {
    expect(await intactly((copy) => copy.entries.splice(n, 0, entryOf(copy, n)))).toBe(
      `wrong-number at entry ${n + 1}`,
    );
  });

  test.each([1, 17])("entries %i and the next exchanged", async (n) => {
    expect(await intactly((copy) => copy.entries.splice(n - 1, 2, entryOf(copy, n + 1), entryOf(copy, n)))).toBe(
      `wrong-number at entry ${n}`,
    );
  });

  test.each([0, 17, record.entries.length])("the signature of head %i altered", async (n) => {
    expect(await intactly((copy) => copy.signatures.splice(n, 1, "ab".repeat(64)))).toBe(
      `altered-signature at signature ${n}`,
    );
  });

  test("signatures exchanged", async () => {
    const swap = ({ signatures }: RecordFile) => signatures.splice(4, 2, signatures[5] ?? "", signatures[4] ?? "");
    expect(await intactly(swap)).toBe("altered-signature at signature 4");
  });

  test("the summary altered", async () => {
    expect(await intactly((copy) => Object.assign(copy.closing?.summary.sharps ?? {}, { opened: 9 }))).toBe(
      "altered-summary at summary",
    );
  });

  test.each([
    ["entries", 101],
    ["head", "ab".repeat(32)],
    ["summary", "ab".repeat(32)],
    ["sealedAt", "2026-11-25T12:00:00.000+00:00"],
  ])("the %s of the seal altered", async (name, value) => {
    const verdict = await verified((copy) => Object.assign(copy.closing?.seal ?? {}, { [name]: value }));
    expect(passes(verdict)).toBe(false);
    expect(verdict.signedBy).toMatchObject({ code: "seal-not-signed", at: { part: "seal" } });
  });

  test("the seal taken off, unless an unfinished record is asked for", async () => {
    const open = recordText({ ...structuredClone(record), closing: null });
    const strict = await verifyRecord(open);
    const lenient = await verifyRecord(open, { acceptUnfinished: true });
    expect(strict.intact).toMatchObject({ code: "not-sealed" });
    expect(lenient.intact).toMatchObject({ ok: true, sealed: false });
  });

  test.each([1, 17, 40])("entry %i altered and everything hashed again without the key", async (n) => {
    const copy = structuredClone(record);
    Object.assign(entryOf(copy, n), { way: { by: "pedal" } });
    const verdict = await verifyRecord(recordText(await remade(copy, null)));
    expect(verdict.intact.ok).toBe(true);
    expect(verdict.signedBy).toMatchObject({ code: "head-not-signed", at: { part: "entry", n } });
  });

  test("an unfinished record hashed again without the key", async () => {
    const copy = structuredClone(record);
    Object.assign(entryOf(copy, 17), { way: { by: "pedal" } });
    const forged = { ...(await remade(copy, null)), closing: null };
    const verdict = await verifyRecord(recordText(forged), { acceptUnfinished: true });
    expect(verdict.signedBy).toMatchObject({ code: "head-not-signed", at: { part: "entry", n: 17 } });
  });

  test("another key put into the header", async () => {
    const other = await newSigner();
    const verdict = await verified((copy) => Object.assign(copy.header, { device: other.publicKey }));
    expect(verdict.intact).toMatchObject({ ok: false });
    expect(verdict.signedBy).toMatchObject({ code: "head-not-signed", at: { part: "header" } });
  });

  test("a summary that does not follow, even signed", async () => {
    const closing = await makeClosing(
      kept,
      { ...summarise(input, kept.entries), takenBack: 7 },
      "2026-11-25T11:00:00.000+00:00",
      signer,
    );
    const verdict = await verifyRecord(recordText({ ...recordOf(kept), closing }));
    expect([verdict.intact.ok, verdict.signedBy.ok]).toEqual([true, true]);
    expect(verdict.follows).toMatchObject({
      code: "summary-differs",
      at: { part: "summary" },
      expected: "takenBack: 1",
      found: "takenBack: 7",
    });
  });

  test("a record that follows from no rules it knows", async () => {
    const copy = structuredClone(record);
    copy.header.rules = "0.0.9";
    const verdict = await verifyRecord(recordText(await remade(copy, signer)));
    expect(verdict.follows).toMatchObject({ code: "unknown-rules", found: "0.0.9" });
  });

  test.each([
    ["spaces", (json: string) => json.replace(',"entries"', ', "entries"')],
    ["a name twice", (json: string) => json.replace('{"at":', '{"n":1,"at":')],
    ["another spelling of a letter", (json: string) => json.replace('"Artist A"', '"Artist \\u0041"')],
    ["a line feed at the end", (json: string) => `${json}\n`],
  ])("the same values written with %s", async (_story, rewrite) => {
    const { intact } = await verifyRecord(rewrite(text));
    expect(intact).toMatchObject({ ok: false, code: "not-canonical" });
  });
});

describe("answers hostile files with a fault of its own:", () => {
  test.each([
    ["nothing", "", "not-json"],
    ["no JSON", "gloveside", "not-json"],
    ["a number", "7", "wrong-shape"],
    ["null", "null", "wrong-shape"],
    ["a list nested 200,000 deep", "[".repeat(200_000), "not-json"],
    ["an object nested 20,000 deep", `${'{"closing":'.repeat(20_000)}1${"}".repeat(20_000)}`, "wrong-shape"],
    [
      "a key that would reach the prototype",
      text.replace('{"closing"', '{"__proto__":{"ok":true},"closing"'),
      "wrong-shape",
    ],
    ["the same, inside an entry", text.replace('{"at":', '{"__proto__":{"n":1},"at":'), "wrong-shape"],
    ["a byte order mark", `\ufeff${text}`, "not-json"],
  ])("%s", async (_story, file, code) => {
    const verdict = await verifyRecord(file);
    expect(verdict.intact).toMatchObject({ ok: false, code });
    expect(({} as { ok?: boolean }).ok).toBeUndefined();
  });

  test("half of a surrogate pair, spelt as JSON lets it", async () => {
    const { intact } = await verifyRecord(text.replace('"Artist A"', '"Artist \\ud800"'));
    expect(intact).toMatchObject({ code: "not-canonical", at: { part: "header" } });
  });

  test("bytes that are not UTF-8, with the entry they stand in", async () => {
    const bytes = new TextEncoder().encode(text);
    const at = text.indexOf('"n":17,');
    bytes[at] = 0xff;
    expect((await verifyRecord(bytes)).intact).toMatchObject({ code: "not-utf8", at: { part: "entry", n: 17 } });
  });

  test("more than any session could be", async () => {
    expect((await verifyRecord(" ".repeat(64_000_001))).intact).toMatchObject({ code: "too-large" });
  });

  test("a newer format, told politely", async () => {
    const { intact } = await verifyRecord(text.replace('"formatVersion":2,"input"', '"formatVersion":3,"input"'));
    expect(intact).toMatchObject({ code: "newer-format", at: { part: "header" }, found: "3" });
  });
});

describe("a note beside the chain", () => {
  const withNote = async (wav: Uint8Array, lengthMs: number) => {
    const note = attachmentOf(wav);
    const told = [...wholeSession.slice(0, 3), noteEvent(note, lengthMs)];
    const lived = await live(input, told, signer, [note]);
    return verifyRecord(recordText(recordOf(lived.kept)), { acceptUnfinished: true });
  };

  test("is as long as its fact says, or the record does not follow from it, even signed", async () => {
    expect((await withNote(toneWav, 250)).follows).toEqual({ ok: true });
    expect(await withNote(toneWav, 290)).toMatchObject({
      intact: { ok: true },
      signedBy: { ok: true },
      follows: { code: "note-differs", at: { part: "personal" }, expected: "290 ms of sound", found: "250 ms" },
    });
  });

  test("is sound that plays, whatever was committed to", async () => {
    const { follows } = await withNote(new TextEncoder().encode("<script>"), 250);
    expect(follows).toMatchObject({ code: "note-differs", found: "no sound that plays" });
  });
});
