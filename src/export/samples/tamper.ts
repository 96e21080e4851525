/**
 * `npm run tamper [-- STRIDE [PART/PARTS]]`: a record of 300 facts and more, changed at every byte (or each STRIDE-th), cut off
 * at every byte, and at every fact removed, doubled, exchanged, inserted, and hashed again without the key. Prints how many
 * were tried, found, and found where they are. Exits with 1 if any was missed. PART/PARTS does a share of the bytes, for
 * several at once; the first share does the facts.
 */
import { inputFor, today } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { attachmentOf, isSignedBy, type LogEntry, newSigner } from "../../log";
import { writeWav } from "../../recogniser/sound/writeWav";
import type { IsSigned } from "../checkIntact";
import { type RecordFile, recordText } from "../recordFile";
import { sealRecord } from "../sealRecord";
import { passes, type Verdict } from "../verdict";
import { type VerifyOptions, verifyRecord } from "../verifyRecord";
import { isPointedOut, partsOf, placeNamed } from "./alterations";
import { altering } from "./altering";
import { live, noteEvent } from "./lived";
import { remade } from "./remake";
import { walked } from "./walked";

const stride = Number(process.argv[2] ?? 1);
if (!Number.isInteger(stride) || stride < 1) throw new RangeError("STRIDE is a whole number above zero.");
const [part = 1, parts = 1] = (process.argv[3] ?? "1/1").split("/").map(Number);
const input = inputFor(smallProtocol);
const gloves = Array.from({ length: 28 }, () => ({ type: "event.reported", event: "freshGloves" }) as const);
const signer = await newSigner();
const note = attachmentOf(writeWav(new Float32Array(160).fill(0.1), 8_000));
const atWork = [...gloves, noteEvent(note, 20)];
const { journal, writer } = await live(input, walked(input, today, { atWork, secondsBetween: 20 }), signer, [note]);
const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealed.ok) throw new Error(sealed.message);
const { record, text } = sealed;
const { closing } = record;
if (!closing) throw new Error("The record is not sealed.");
const bytes = new TextEncoder().encode(text);
if (bytes.length !== text.length) throw new Error("The record is not all ASCII.");
const facts = record.entries.length;
console.log(`${facts} facts, ${bytes.length} bytes, every ${stride === 1 ? "byte" : `${stride}th byte`}`);
if (facts < 300) throw new Error("The record is too short.");

/**
 * Chain, seal and signatures must find it by themselves: the replay, which takes longest, is asked only where they do not.
 * A verdict is thereby never better than the verifier's own.
 */
const quickly: VerifyOptions = {
  replay: () => ({ ok: true, summary: closing.summary }),
  isSigned: remembered(isSignedBy),
};
/** The same signatures come again in every copy; each answer is asked for once. */
function remembered(isSigned: IsSigned): IsSigned {
  const answers = new Map<string, Promise<boolean>>();
  return (key, message, signature) => {
    const asked = `${key} ${signature} ${Buffer.from(message).toString("latin1")}`;
    const known = answers.get(asked);
    if (known) return known;
    const answer = isSigned(key, message, signature);
    if (answers.size < 100_000) answers.set(asked, answer);
    return answer;
  };
}
const verdictOnOne = altering(record, quickly);
let compared = 0;
/** Each 499th is judged from the whole file, too, and must come out the same. */
async function verdictAt(changed: string, at: number): Promise<Verdict> {
  const verdict = await verdictOnOne(changed, at);
  if (at % 499 === 0) {
    compared++;
    const whole = await verifyRecord(changed, quickly);
    if (JSON.stringify(whole) !== JSON.stringify(verdict))
      throw new Error(`The verdict at byte ${at} is not the verifier's.`);
  }
  return passes(verdict) ? verifyRecord(changed) : verdict;
}
async function verdictOn(file: Uint8Array | string): Promise<Verdict> {
  const verdict = await verifyRecord(file, quickly);
  return passes(verdict) ? verifyRecord(file) : verdict;
}

type Try = () => Promise<{ verdict: Verdict; isPlaced: boolean }>;
let isMissed = false;

async function all(what: string, tries: Iterable<Try>): Promise<void> {
  let [tried, found, placed] = [0, 0, 0];
  for (const one of tries) {
    const { verdict, isPlaced } = await one();
    tried++;
    if (!passes(verdict)) found++;
    if (isPlaced) placed++;
    else console.log(`  not placed: ${what} ${tried}`, JSON.stringify(verdict).slice(0, 300));
  }
  console.log(`${what}: ${tried} tried, ${found} found, ${placed} placed`);
  isMissed ||= found < tried || placed < tried;
}

const partAt = partsOf(record);
function* everyByte(from = 0, to = bytes.length, step = stride): Generator<Try> {
  for (let at = from + step * (part - 1); at < to; at += step * parts) {
    yield async () => {
      // A digit to a digit and a letter to a letter, so that most changes still read as JSON.
      const changed = text.slice(0, at) + String.fromCharCode((bytes[at] ?? 0) ^ 1) + text.slice(at + 1);
      const verdict = await verdictAt(changed, at);
      return { verdict, isPlaced: isPointedOut(verdict, partAt(at), at) };
    };
  }
}
function* everyCut(): Generator<Try> {
  for (let length = stride * (part - 1); length < bytes.length; length += stride * parts) {
    yield async () => {
      const verdict = await verdictOn(bytes.subarray(0, length));
      const named = placeNamed(verdict);
      // What stood last, or what should stand next: between two facts either may be named.
      const around = length === 0 ? [] : [partAt(length - 1), partAt(length)];
      const isThere = around.some((place) => JSON.stringify(place) === JSON.stringify(named));
      return { verdict, isPlaced: isThere || named?.part === "file" };
    };
  }
}

const entry = (copy: RecordFile, n: number) => copy.entries[n - 1] as LogEntry;
/** At every fact but the last `spare`, in a copy of the record. `at` is the entry where it must be found. */
function* everyFact(
  change: (copy: RecordFile, n: number) => RecordFile | Promise<RecordFile>,
  at: (n: number) => number,
  spare = 0,
): Generator<Try> {
  for (let n = 1; n <= facts - spare; n++) {
    yield async () => {
      const changed = await change({ ...record, entries: [...record.entries], signatures: [...record.signatures] }, n);
      const verdict = await verdictOn(recordText(changed));
      const named = placeNamed(verdict);
      return { verdict, isPlaced: named?.part === "entry" && named.n === at(n) };
    };
  }
}
const edited = (copy: RecordFile, edit: (copy: RecordFile) => unknown): RecordFile => {
  edit(copy);
  return copy;
};

await all("a byte changed", everyByte());
const [beside, signatures] = [text.indexOf(',"personal":['), text.lastIndexOf(',"signatures":[')];
await all("a byte beside the chain changed", everyByte(beside, signatures, 1));
await all("cut off", everyCut());
console.log(`compared with the verifier over the whole file: ${compared}, all the same`);
if (part > 1) process.exit(isMissed ? 1 : 0);
await all(
  "a fact removed, with its signature",
  everyFact(
    (copy, n) => edited(copy, ({ entries, signatures }) => [entries.splice(n - 1, 1), signatures.splice(n, 1)]),
    (n) => n,
  ),
);
await all(
  "a fact doubled",
  everyFact(
    (copy, n) => edited(copy, ({ entries }) => entries.splice(n, 0, entry(copy, n))),
    (n) => n + 1,
  ),
);
await all(
  "a fact and the next exchanged",
  everyFact(
    (copy, n) => edited(copy, ({ entries }) => entries.splice(n - 1, 2, entry(copy, n + 1), entry(copy, n))),
    (n) => n,
    1,
  ),
);
await all(
  "a fact put in",
  everyFact(
    (copy, n) =>
      edited(copy, ({ entries }) =>
        entries.splice(n, 0, { ...entry(copy, n), fact: { type: "v1.EarLost", witnessedMs: 0, cause: n }, n: n + 1 }),
      ),
    (n) => n + 1,
  ),
);
await all(
  "a fact changed, all hashed again without the key",
  everyFact(
    (copy, n) =>
      remade(
        edited(copy, ({ entries }) => entries.splice(n - 1, 1, { ...entry(copy, n), way: { by: "pedal" } })),
        null,
      ),
    (n) => n,
  ),
);
process.exitCode = isMissed ? 1 : 0;
