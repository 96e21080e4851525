/**
 * Verifies a record: shape, chain, seal and bytes; the key; and by replay, that all it says follows from its facts.
 *
 * A seal covers every head and every head's signature, so one signature answers for a sealed record. The others are
 * looked at to say *where* it was altered, and one by one where there is no seal yet.
 */
import { clientIn, fingerprint, isSignedBy, notesIn, type PublicKey, signedMessage, stateOf, walkChain } from "../log";
import { messageOfSeal } from "../log/seal";
import { checkIntact, type IsSigned } from "./checkIntact";
import { noteTrouble } from "./checkNotes";
import { firstDifference } from "./firstDifference";
import { type ReadRecord, readRecord } from "./readRecord";
import type { RecordFile } from "./recordFile";
import { type Replay, replay as replayByRules } from "./replay/replay";
import type { Fault, Verdict } from "./verdict";

export type VerifyOptions = {
  replay?: Replay;
  /** Keys that the studio trusts; without them the key is named and not judged. */
  trusted?: readonly PublicKey[];
  /** Takes a record of a session that is not sealed yet; facts may be missing at its end. */
  acceptUnfinished?: boolean;
  /** How a signature is checked; who verifies many copies of one record may remember answers. */
  isSigned?: IsSigned;
};

/** @param file The bytes of a record file, or its text; anything at all may stand in it. Never throws. */
export async function verifyRecord(file: Uint8Array | string, options: VerifyOptions = {}): Promise<Verdict> {
  const read = readRecord(file);
  return read.ok ? judge(read, walkChain(read.raw.header, read.raw.entries), options) : unread(read);
}

/** The verdict on a record that could be read. @param chain its own, walked from its `raw`. */
export async function judge(
  { record, raw, text }: Pick<Extract<ReadRecord, { ok: true }>, "record" | "raw" | "text">,
  chain: ReturnType<typeof walkChain>,
  options: VerifyOptions = {},
): Promise<Verdict> {
  const isSigned = options.isSigned ?? isSignedBy;
  const intact = await checkIntact(raw, text, chain, options.acceptUnfinished ?? false, isSigned);
  const signedBy = await checkSigned(raw, chain.heads, options.trusted, isSigned);
  const known = { measured: 0, scanned: 0, said: 0 };
  for (const entry of record.entries) known[entry.known]++;
  return {
    intact,
    signedBy,
    follows: checkFollows(record, options.replay ?? replayByRules),
    known,
    personal: beside(record),
  };
}

const unread = (intact: Extract<ReadRecord, { ok: false }>): Verdict => {
  const notChecked: Fault<"not-checked"> = {
    ok: false,
    code: "not-checked",
    at: intact.at,
    expected: "a record that can be read",
    found: intact.code,
  };
  return { intact, signedBy: notChecked, follows: notChecked, known: null, personal: null };
};

function beside({ header, entries, personal = [] }: RecordFile): Verdict["personal"] {
  const notes = { kept: 0, erased: 0, notIncluded: 0 };
  const parts = new Map(personal.map((part) => [part.n, part]));
  for (const [n] of notesIn(entries)) notes[stateOf(parts.get(n))]++;
  return { client: clientIn(header, personal).state, notes };
}

async function checkSigned(
  record: RecordFile,
  heads: readonly string[],
  trusted: readonly PublicKey[] | undefined,
  isSigned: IsSigned,
): Promise<Verdict["signedBy"]> {
  const key = record.header.device;
  const no = (code: "head-not-signed" | "seal-not-signed", at: Fault<string>["at"]): Verdict["signedBy"] => ({
    ok: false,
    code,
    at,
    expected: `a signature by ${fingerprint(key)}`,
    found: "none by that key",
  });
  if (record.closing) {
    const { signature, ...body } = record.closing.seal;
    if (await isSigned(key, messageOfSeal(body), signature)) return signed(key, trusted);
  }
  for (const [n, head] of heads.entries()) {
    const signature = record.signatures[n];
    if (signature === undefined || !(await isSigned(key, signedMessage("head", head), signature))) {
      return no("head-not-signed", n === 0 ? { part: "header" } : { part: "entry", n });
    }
  }
  return record.closing ? no("seal-not-signed", { part: "seal" }) : signed(key, trusted);
}

const signed = (key: PublicKey, trusted: readonly PublicKey[] | undefined): Verdict["signedBy"] => ({
  ok: true,
  key,
  fingerprint: fingerprint(key),
  trusted: trusted ? trusted.includes(key) : null,
});

function checkFollows(record: RecordFile, replay: Replay): Verdict["follows"] {
  const { header, entries, closing } = record;
  const replayed = replay(header.rules, header.input, entries);
  if (!replayed.ok) {
    const { code, expected, found } = replayed;
    return {
      ok: false,
      code,
      at: "at" in replayed ? { part: "entry", n: replayed.at } : { part: "header" },
      expected,
      found,
    };
  }
  const note = noteTrouble(entries, record.personal ?? []);
  if (note) return note;
  if (!closing) return { ok: true };
  const difference = firstDifference(replayed.summary, closing.summary);
  if (difference === null) return { ok: true };
  return { ok: false, code: "summary-differs", at: { part: "summary" }, ...difference };
}
