/**
 * `npm run golden`: writes tests/vectors anew. Golden records are kept for ever: run this only for a new format, into new
 * names, since what it is for is that old records go on reading as they did.
 */
import { mkdir, writeFile } from "node:fs/promises";
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { type LogEntry, signerFromSecret } from "../../log";
import { type RecordFile, recordOf, recordText } from "../recordFile";
import { sealRecord } from "../sealRecord";
import { live } from "./lived";
import { remade } from "./remake";
import { wholeSession } from "./wholeSession";

/** A key for vectors only: 32 bytes that everybody knows. */
const signer = await signerFromSecret(new Uint8Array(32).fill(7));
const { journal, writer, kept } = await live(inputFor(smallProtocol), wholeSession, signer);
const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealed.ok) throw new Error(sealed.message);
const { record } = sealed;

const changed = (change: (copy: RecordFile) => unknown): RecordFile => {
  const copy = structuredClone(record);
  change(copy);
  return copy;
};
const entry = (copy: RecordFile, n: number) => copy.entries[n - 1] as LogEntry;
const shorter = (copy: RecordFile) => Object.assign(entry(copy, 75).fact, { creditedMs: 240_000 });

const files: Record<string, RecordFile> = {
  "v1-good.json": record,
  "v1-unfinished.json": recordOf({ ...kept, closing: null }),
  "v1-entry-altered.json": changed((copy) => Object.assign(entry(copy, 41), { known: "measured" })),
  "v1-entry-removed.json": changed((copy) => [copy.entries.splice(60, 1), copy.signatures.splice(61, 1)]),
  "v1-end-cut-off.json": changed((copy) => [copy.entries.splice(90), copy.signatures.splice(91)]),
  "v1-hashed-again.json": await remade(changed(shorter), null),
  "v1-signed-again.json": await remade(changed(shorter), signer),
};

const folder = new URL("../../../tests/vectors/", import.meta.url);
await mkdir(folder, { recursive: true });
for (const [name, file] of Object.entries(files)) await writeFile(new URL(name, folder), recordText(file));
