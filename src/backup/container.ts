/**
 * The file of a backup: one line in the clear that says how it was locked, then sealed pieces.
 *
 *   {"format":"gloveside-backup", ... }\n      at most 1,024 bytes; sealed with every piece, so that nobody can weaken it
 *   length (4 bytes, big end first) ‖ piece    AES-256-GCM over at most 1 MiB of the packed text, with its tag
 *
 * The key is PBKDF2-HMAC-SHA-256 of the passphrase. Piece i is sealed under nonce ‖ i (4 bytes) ‖ 1 for the last, else 0
 * (the STREAM construction, Hoang, Reyhanitabar, Rogaway and Vizar 2015): none can be altered, moved, doubled or cut off.
 */
import { z } from "zod";
import { rounds } from "../locked";
import { fromBase64, keyFrom, toBase64 } from "../locked/locked";

export const pieceBytes = 1_048_576;
const longestLine = 1_024;
const tagBytes = 16;

const Opening = z.strictObject({
  format: z.literal("gloveside-backup"),
  formatVersion: z.literal(1),
  kdf: z.strictObject({
    name: z.literal("PBKDF2-HMAC-SHA-256"),
    rounds: z.number().int().min(1).max(6_000_000),
    salt: z.base64().length(24),
  }),
  cipher: z.strictObject({
    name: z.literal("AES-256-GCM"),
    nonce: z.base64().length(12),
    pieceBytes: z.literal(pieceBytes),
  }),
  packed: z.literal("gzip"),
});
type Opening = z.infer<typeof Opening>;

export type ContainerCode =
  | "passphrase-short"
  | "not-a-backup"
  | "newer-format"
  /** Or the first piece was altered: the cipher cannot tell the two apart, and should not. */
  | "wrong-passphrase"
  /** A later piece was altered, moved or cut off. */
  | "damaged";

/** Thrown inside the streams, and made a value where they end. */
export class BackupTrouble extends Error {
  readonly code: ContainerCode | "too-large" | "not-verified" | "other-record" | "records-locked";
  constructor(code: BackupTrouble["code"], message: string) {
    super(message);
    this.code = code;
  }
}

type Bytes = Uint8Array<ArrayBuffer>;
const utf8 = new TextEncoder();

function nonceOf(prefix: Bytes, counter: number, isLast: boolean): Bytes {
  const nonce = new Uint8Array(12);
  nonce.set(prefix);
  new DataView(nonce.buffer).setUint32(7, counter);
  nonce[11] = isLast ? 1 : 0;
  return nonce;
}

/**
 * Locks a stream of bytes. Memory holds two pieces at the most.
 * @param work rounds of PBKDF2; tests take fewer.
 */
export async function* locking(
  plain: AsyncIterable<Uint8Array>,
  passphrase: string,
  work: number = rounds,
): AsyncGenerator<Bytes> {
  if ([...passphrase].length < 8)
    throw new BackupTrouble("passphrase-short", "A passphrase needs 8 characters or more.");
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const prefix = crypto.getRandomValues(new Uint8Array(7));
  const opening: Opening = {
    ...{ format: "gloveside-backup", formatVersion: 1 },
    kdf: { name: "PBKDF2-HMAC-SHA-256", rounds: work, salt: toBase64(salt) },
    cipher: { name: "AES-256-GCM", nonce: toBase64(prefix), pieceBytes },
    packed: "gzip",
  };
  const line = utf8.encode(`${JSON.stringify(opening)}\n`);
  const key = await keyFrom(passphrase, salt, work);
  yield line;
  let counter = 0;
  let ahead: Bytes | null = null;
  const sealed = async (piece: Bytes, isLast: boolean): Promise<Bytes> => {
    const how = { name: "AES-GCM", iv: nonceOf(prefix, counter, isLast), additionalData: line };
    counter += 1;
    const body = new Uint8Array(await crypto.subtle.encrypt(how, key, piece));
    const framed = new Uint8Array(4 + body.length);
    new DataView(framed.buffer).setUint32(0, body.length);
    framed.set(body, 4);
    return framed;
  };
  for await (const piece of inPieces(plain)) {
    if (ahead) yield await sealed(ahead, false);
    ahead = piece;
  }
  yield await sealed(ahead ?? new Uint8Array(0), true);
}

/** Cuts any run of bytes into pieces of one size; the last may be shorter. */
async function* inPieces(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Bytes> {
  let piece = new Uint8Array(pieceBytes);
  let filled = 0;
  for await (const some of bytes) {
    for (let at = 0; at < some.length; ) {
      const taken = some.subarray(at, at + pieceBytes - filled);
      piece.set(taken, filled);
      filled += taken.length;
      at += taken.length;
      if (filled < pieceBytes) continue;
      yield piece;
      piece = new Uint8Array(pieceBytes);
      filled = 0;
    }
  }
  if (filled > 0) yield piece.slice(0, filled);
}

/** Unlocks a file that is hostile until each piece has opened. Throws `BackupTrouble` and nothing else of its own. */
export async function* unlocking(file: Blob, passphrase: string): AsyncGenerator<Bytes> {
  const { line, opening } = await openingOf(file);
  const key = await keyFrom(passphrase, fromBase64(opening.kdf.salt), opening.kdf.rounds);
  const prefix = fromBase64(opening.cipher.nonce);
  let at = line.length;
  for (let counter = 0; ; counter++) {
    const head = await bytesOf(file, at, 4);
    const length = head.length === 4 ? new DataView(head.buffer).getUint32(0) : 0;
    if (length < tagBytes || length > pieceBytes + tagBytes) throw altered(counter);
    const body = await bytesOf(file, at + 4, length);
    at += 4 + length;
    const isLast = at >= file.size;
    if (body.length !== length) throw altered(counter);
    const how = { name: "AES-GCM", iv: nonceOf(prefix, counter, isLast), additionalData: line };
    let opened: ArrayBuffer;
    try {
      opened = await crypto.subtle.decrypt(how, key, body);
    } catch {
      throw altered(counter);
    }
    yield new Uint8Array(opened);
    if (isLast) return;
  }
}

const altered = (counter: number): BackupTrouble =>
  counter === 0
    ? new BackupTrouble("wrong-passphrase", "The passphrase does not open it, or it was altered.")
    : new BackupTrouble("damaged", `It was altered or cut off in its part ${counter + 1}. Nothing was taken from it.`);

const bytesOf = async (file: Blob, at: number, length: number): Promise<Bytes> =>
  new Uint8Array(await file.slice(at, at + length).arrayBuffer());

/** Reads a kilobyte, however large the file. */
async function openingOf(file: Blob): Promise<{ line: Bytes; opening: Opening }> {
  const no = new BackupTrouble("not-a-backup", "This is not a backup made here.");
  const first = await bytesOf(file, 0, longestLine);
  const end = first.indexOf(10);
  if (end < 0) throw no;
  let found: unknown;
  try {
    found = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(first.subarray(0, end)));
  } catch {
    throw no;
  }
  const { format, formatVersion } = (found ?? {}) as { format?: unknown; formatVersion?: unknown };
  if (format === "gloveside-backup" && typeof formatVersion === "number" && formatVersion > 1)
    throw new BackupTrouble("newer-format", `Made by a newer app (format ${formatVersion}). Restore it with that one.`);
  const read = Opening.safeParse(found);
  if (!read.success) throw no;
  return { line: first.slice(0, end + 1), opening: read.data };
}
