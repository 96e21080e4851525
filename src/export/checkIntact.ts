/** Whether chain, seal and bytes of a record hold together, and the place of the first thing that does not. */
import { commitmentsIn, type Digest, firstStranger, type isSignedBy, signedMessage, type walkChain } from "../log";
import { digestOfSignatures, digestOfSummary } from "../log/seal";
import { fault } from "./readRecord";
import { type RecordFile, textOfParts } from "./recordFile";
import type { Fault, IntactCode, Place, Verdict } from "./verdict";

type Walked = ReturnType<typeof walkChain>;
export type IsSigned = typeof isSignedBy;
/** Whether signature n of the record is its device's over this head. */
type IsSignedHead = (n: number, head: Digest) => Promise<boolean>;

export async function checkIntact(
  record: RecordFile,
  text: string,
  chain: Walked,
  acceptUnfinished: boolean,
  isSigned: IsSigned,
): Promise<Verdict["intact"]> {
  const { header, signatures } = record;
  const isSignedHead: IsSignedHead = (n, head) =>
    isSigned(header.device, signedMessage("head", head), signatures[n] ?? "");
  const trouble =
    (await chainTrouble(isSignedHead, chain)) ??
    (await sealTrouble(record, isSignedHead, chain)) ??
    signatureCount(record) ??
    personalTrouble(record) ??
    bytesTrouble(record, text, chain);
  if (trouble) return trouble;
  const sealed = record.closing !== null;
  if (!sealed && !acceptUnfinished)
    return fault("not-sealed", { part: "seal" }, "a seal", "none: facts may be missing");
  return { ok: true, entries: record.entries.length, sealed };
}

const placeOfHead = (n: number): Place => (n === 0 ? { part: "header" } : { part: "entry", n });

/** Two neighbours disagree about the head between them. Its signature tells which of them was altered. */
async function whoWasAltered(isSignedHead: IsSignedHead, n: number, computed: Digest, named: Digest) {
  if (await isSignedHead(n, computed)) return "the one that names it" as const;
  return (await isSignedHead(n, named)) ? ("the one it is of" as const) : null;
}

async function chainTrouble(isSignedHead: IsSignedHead, { broken }: Walked): Promise<Fault<IntactCode> | null> {
  if (broken === null) return null;
  if (broken.code === "wrong-number") {
    return fault("wrong-number", { part: "entry", n: broken.at }, broken.expected, broken.found);
  }
  const { at, expected, found } = broken;
  const before = at - 1;
  const altered = await whoWasAltered(isSignedHead, before, expected, found);
  if (altered === "the one that names it") return fault("altered-link", { part: "entry", n: at }, expected, found);
  // Without a signature to tell, the earlier of the two is where doubt begins.
  return fault(before === 0 ? "altered-header" : "altered-entry", placeOfHead(before), found, expected);
}

async function sealTrouble(
  record: RecordFile,
  isSignedHead: IsSignedHead,
  { heads }: Walked,
): Promise<Fault<IntactCode> | null> {
  const { closing, entries, signatures } = record;
  if (!closing) return null;
  const { seal, summary } = closing;
  const last = heads.at(-1) ?? "";
  if (seal.entries !== entries.length) {
    // The sealed head is reached: no entry is missing, the number was altered.
    if (seal.head === last) return fault("altered-seal", { part: "seal" }, entries.length, seal.entries);
    const at = { part: "entry", n: Math.min(seal.entries, entries.length) + 1 } as const;
    return fault("entries-missing", at, `${seal.entries} entries`, `${entries.length} entries`);
  }
  if (seal.head !== last) {
    const altered = await whoWasAltered(isSignedHead, entries.length, last, seal.head);
    if (altered === "the one that names it") return fault("altered-seal", { part: "seal" }, last, seal.head);
    return fault("altered-entry", placeOfHead(entries.length), seal.head, last);
  }
  const ofSummary = digestOfSummary(summary);
  if (seal.summary !== ofSummary) return fault("altered-summary", { part: "summary" }, seal.summary, ofSummary);
  const ofSignatures = digestOfSignatures(signatures);
  if (seal.signatures === ofSignatures) return null;
  if (signatures.length !== heads.length) return signatureCount(record);
  for (const [n, head] of heads.entries()) {
    if (!(await isSignedHead(n, head))) {
      return fault("altered-signature", { part: "signature", n }, "this device's signature", signatures[n]);
    }
  }
  return fault("altered-seal", { part: "seal" }, ofSignatures, seal.signatures);
}

function signatureCount({ entries, signatures }: RecordFile): Fault<IntactCode> | null {
  const expected = entries.length + 1;
  if (signatures.length === expected) return null;
  const at = { part: "signature", n: Math.min(expected, signatures.length) } as const;
  return fault("signatures-missing", at, `${expected} signatures`, `${signatures.length}`);
}

function personalTrouble({ header, entries, personal = [] }: RecordFile): Fault<IntactCode> | null {
  const stranger = firstStranger({ header, entries }, personal);
  if (stranger === null) return null;
  const expected = commitmentsIn(header, entries).get(stranger.n) ?? "nothing: no commitment stands there";
  return fault("personal-differs", { part: "personal", n: stranger.n }, expected, "something else");
}

/** Values that are the same written otherwise: names twice, other spacing, 1.0 for 1. */
function bytesTrouble(record: RecordFile, text: string, { texts }: Walked): Fault<IntactCode> | null {
  const whole = textOfParts(record, texts);
  if (whole.text === text) return null;
  let offset = 0;
  while (whole.text[offset] === text[offset]) offset++;
  const n = whole.entryStarts.filter((start) => start <= offset).length;
  const at: Place = n > 0 && offset < whole.entriesEnd ? { part: "entry", n } : { part: "file", offset };
  const around = (t: string) => JSON.stringify(t.slice(offset, offset + 12));
  return fault("not-canonical", at, around(whole.text), around(text));
}
