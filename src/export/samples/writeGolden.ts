/**
 * `npm run golden`: writes into tests/vectors what is not there yet. Golden records are kept for ever: for a new format or
 * new rules give them new names, since what they are for is that old records go on reading as they did.
 */
import { existsSync } from "node:fs";
import { mkdir, writeFile } from "node:fs/promises";
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { attachmentOf, erased, makeClosing, notesIn } from "../../log";
import { signerFromSecret } from "../../log/signedByScript";
import { type RecordFile, recordOf, recordText } from "../recordFile";
import { sealRecord } from "../sealRecord";
import { accidentSession } from "./accidentSession";
import { live, noteEvent, openingFor, sessionA, toneWav } from "./lived";
import { slipSession } from "./slipSession";
import { wholeSession } from "./wholeSession";

/** A key and salts for vectors only: bytes that everybody knows. */
const signer = await signerFromSecret(new Uint8Array(32).fill(7));
const opening = openingFor(inputFor(smallProtocol), signer.publicKey, sessionA, new Uint8Array(32).fill(8));
const note = attachmentOf(toneWav, new Uint8Array(32).fill(9));
const told = wholeSession.toSpliced(9, 0, noteEvent(note));
const { journal, writer, kept } = await live(inputFor(smallProtocol), told, signer, [note], opening);
const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealed.ok) throw new Error(sealed.message);
const { record } = sealed;
const notesAt = notesIn(record.entries)[0]?.[0] ?? 0;

const changed = (change: (copy: RecordFile) => unknown): RecordFile => {
  const copy = structuredClone(record);
  change(copy);
  return copy;
};
const beside = (personal: RecordFile["personal"]): RecordFile => {
  const { personal: _personal, ...rest } = record;
  return personal ? { ...rest, personal } : rest;
};
const [reference, sound] = record.personal ?? [];
if (!reference || !sound || !("text" in reference) || !("wav" in sound)) throw new Error("Nothing stands beside it.");
const otherSalt = "ff".repeat(32);
const otherWav = Buffer.from(toneWav.with(100, 1)).toString("base64");

const files: Record<string, RecordFile> = {
  "v2-good.json": record,
  "v2-unfinished.json": recordOf({ ...kept, closing: null }),
  "v2-all-erased.json": beside([erased(0), erased(notesAt)]),
  "v2-without-personal-part.json": beside(undefined),
  "v2-other-client.json": beside([{ ...reference, text: "C-002" }, sound]),
  "v2-other-salt.json": beside([{ ...reference, salt: otherSalt }, sound]),
  "v2-note-altered.json": beside([reference, { ...sound, wav: otherWav }]),
  "v2-note-elsewhere.json": beside([reference, { ...sound, n: notesAt + 1 }]),
  "v2-commitment-altered.json": changed(({ entries }) =>
    Object.assign(entries[notesAt - 1]?.fact ?? {}, { note: "0".repeat(64) }),
  ),
};

/** One for each version of the rules that reads it otherwise; that of 1.1.0 was written by the app of its day. */
const accident = await live(inputFor(smallProtocol), accidentSession, signer, [], opening);
files["v2-accident-rules-1.2.0.json"] = recordOf({ ...accident.kept, closing: null });
/** That of 1.4.0 was written by the app of its day. */
const slip = await live(inputFor(smallProtocol), slipSession, signer, [], opening);
files["v2-slip-rules-1.5.0.json"] = recordOf({ ...slip.kept, closing: null });

/** Written by rules 1.3.0: the summary names the note; and sealed anew by the device's own key, with a summary that does not. */
files["v2-notes-rules-1.3.0.json"] = record;
const { entries, signatures, closing } = record;
if (!closing) throw new Error("Not sealed.");
const chain = { entries, signatures, head: closing.seal.head };
const silent = await makeClosing(chain, { ...closing.summary, notes: [] }, closing.seal.sealedAt, signer);
files["v2-notes-rules-1.3.0-not-told.json"] = { ...record, closing: silent };

/** Written by rules 1.4.0: the bottle was taken out of use, and the front of the record says so. */
const outOfUse = await live(
  inputFor(smallProtocol),
  told.toSpliced(-2, 0, { type: "item.outOfUse", item: "bottle" }),
  signer,
  [note],
  opening,
);
const sealedOut = await sealRecord(outOfUse.journal, outOfUse.writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealedOut.ok) throw new Error(sealedOut.message);
files["v2-out-of-use-rules-1.4.0.json"] = sealedOut.record;

const folder = new URL("../../../tests/vectors/", import.meta.url);
await mkdir(folder, { recursive: true });
for (const [name, file] of Object.entries(files)) {
  const at = new URL(name, folder);
  if (!existsSync(at)) await writeFile(at, recordText(file));
}
