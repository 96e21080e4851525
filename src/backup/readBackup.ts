/** A backup read line by line, each verified before it is handed on: a record as any record is, a row by its schema. */
import { readRecord } from "../export/readRecord";
import type { RecordFile } from "../export/recordFile";
import { verifyRecord } from "../export/verifyRecord";
import { canonicalText } from "../log";
import { readProtocol } from "../session/readProtocol";
import { type Change, kinds } from "../studio/kinds";
import { BackupTrouble, unlocking } from "./container";
import { Line, type StudioRow } from "./lines";
import { unpacked } from "./packing";

export type Verified =
  | { readonly kind: "session"; readonly record: RecordFile }
  | { readonly kind: "row"; readonly row: Change }
  | { readonly kind: "protocol"; readonly text: string };

/** Throws `BackupTrouble` at the first line that is not as it should be; what came before is then not to be used. */
export async function* readBackup(file: Blob, passphrase: string): AsyncGenerator<Verified> {
  const counted = { session: 0, row: 0, protocol: 0 };
  let hasEnded = false;
  for await (const text of unpacked(unlocking(file, passphrase))) {
    const line = lineIn(text);
    if (hasEnded || !line) throw notOurs(`line ${counted.session + counted.row + counted.protocol + 1}`);
    if (line.kind === "end") {
      const isWhole =
        line.sessions === counted.session && line.rows === counted.row && line.protocols === counted.protocol;
      if (!isWhole) throw notOurs("its count of what it holds");
      hasEnded = true;
      continue;
    }
    counted[line.kind] += 1;
    yield await verified(line);
  }
  if (!hasEnded) throw notOurs("its end");
}

const notOurs = (what: string): BackupTrouble =>
  new BackupTrouble("not-verified", `It does not hold together: ${what}. Nothing was taken from it.`);

function lineIn(text: string): Line | null {
  try {
    const read = Line.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

async function verified(line: Exclude<Line, { kind: "end" }>): Promise<Verified> {
  switch (line.kind) {
    case "session":
      return { kind: "session", record: await verifiedRecord(line.record) };
    case "row":
      return { kind: "row", row: verifiedRow(line.row) };
    case "protocol":
      if (!readProtocol(line.text).ok) throw notOurs("a protocol in it");
      return line;
  }
}

async function verifiedRecord(found: unknown): Promise<RecordFile> {
  let text: string;
  try {
    text = canonicalText(found);
  } catch {
    throw notOurs("a record in it");
  }
  const read = readRecord(text);
  // Whether it follows from its facts is the record's own affair; altered it may not be.
  const { intact, signedBy } = await verifyRecord(text, { acceptUnfinished: true });
  if (read.ok && intact.ok && signedBy.ok) return read.record;
  const session = (found as { header?: { session?: unknown } } | null)?.header?.session;
  throw notOurs(
    `the record ${typeof session === "string" ? session.slice(0, 40) : "in it"}, ${intact.ok ? "" : intact.code}`,
  );
}

function verifiedRow({ kind, id, value }: StudioRow): Change {
  const read = kinds[kind].safeParse(value);
  if (!read.success) throw notOurs(`the row ${kind} ${id}`);
  return { kind, id, value: read.data } as Change;
}
