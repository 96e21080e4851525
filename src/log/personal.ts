/**
 * What a record holds of a person stands beside its chain: the chain has a salted commitment, the part itself is kept
 * apart and can be erased, after which the record verifies as before. `n` says where the commitment stands: 0 for the
 * client's reference in the header, else the entry of a note.
 */
import { bytesToHex } from "@noble/hashes/utils.js";
import { z } from "zod";
import { fromBase64, toBase64 } from "../locked/locked";
import type { SessionInput } from "../session/sessionInput";
import { bytesOf, type Digest } from "./canonical";
import { commitmentTo, isWhatWasCommitted, newSalt } from "./commitment";
import type { LogEntry } from "./entry";
import { formatVersion, type Header } from "./header";

const N = z.number().int().min(0);
/** 32 bytes as lower-case hex. */
const Salt = z.string().regex(/^[0-9a-f]{64}$/, "64 lower-case hex digits");
/** A note of half a minute is 960,044 bytes. */
const longestWav = 1_400_000;

export const PersonalPart = z.union([
  z.strictObject({ n: N, salt: Salt, text: z.string().min(1).max(60) }),
  /** A note that was spoken: a whole WAV file in base64. */
  z.strictObject({ n: N, salt: Salt, wav: z.base64().max(longestWav) }),
  /** Asked for and carried out: what stood here is gone, its salt with it. */
  z.strictObject({ n: N, erased: z.literal(true) }),
]);
export type PersonalPart = z.infer<typeof PersonalPart>;
export type Attachment = Omit<Extract<PersonalPart, { wav: string }>, "n">;

/** A header before the format's own marks are put on. */
export type Opening = Pick<Header, "session" | "rules" | "phraseModel" | "appVersion" | "device" | "previousHead"> & {
  readonly input: SessionInput;
};
export type OpenedRecord = { readonly header: Header; readonly personal: readonly PersonalPart[] };

/** Takes the client's reference out of what goes into the chain. @param salt 32 bytes; given only where all must repeat. */
export function openRecord({ input, ...opening }: Opening, salt: Uint8Array = newSalt()): OpenedRecord {
  const { clientReference: text, ...rest } = input;
  const personal = text === undefined ? [] : [{ n: 0, salt: bytesToHex(salt), text }];
  const client = text === undefined ? null : commitmentTo(new TextEncoder().encode(text), salt);
  return { header: { format: "gloveside-record", formatVersion, ...opening, input: rest, client }, personal };
}

/** @param wav a whole WAV file. @returns what goes into the chain, and what is kept beside it. */
export function attachmentOf(
  wav: Uint8Array,
  salt: Uint8Array = newSalt(),
): { readonly note: Digest; readonly attachment: Attachment } {
  return { note: commitmentTo(wav, salt), attachment: { salt: bytesToHex(salt), wav: toBase64(wav) } };
}

/** Where the chain has commitments, and what they are. */
export function commitmentsIn(header: Header, entries: readonly LogEntry[]): ReadonlyMap<number, Digest> {
  const found = new Map<number, Digest>();
  if (header.formatVersion === formatVersion && header.client !== null) found.set(0, header.client);
  for (const [n, note] of notesIn(entries)) found.set(n, note);
  return found;
}

/** The notes that were spoken, by the number of their entry. */
export function notesIn(entries: readonly LogEntry[]): readonly (readonly [number, Digest])[] {
  return entries.flatMap(({ n, fact }) => (fact.type === "v1.NoteKept" ? [[n, fact.note] as const] : []));
}

/** Whether the part, as it is kept, is what the chain has at its place. What was erased cannot be told apart from it. */
export function belongs(part: PersonalPart, commitment: Digest | undefined): boolean {
  if (commitment === undefined) return false;
  if ("erased" in part) return true;
  const isReference = "text" in part;
  if (isReference !== (part.n === 0)) return false;
  const content = isReference ? new TextEncoder().encode(part.text) : bytesOfBase64(part.wav);
  return content !== null && isWhatWasCommitted(commitment, content, bytesOf(part.salt));
}

/** The first part that does not belong where it says, comes twice or is out of order; null where all do. */
export function firstStranger(
  { header, entries }: { header: Header; entries: readonly LogEntry[] },
  personal: readonly PersonalPart[],
): PersonalPart | null {
  const commitments = commitmentsIn(header, entries);
  let before = -1;
  for (const part of personal) {
    if (part.n <= before || !belongs(part, commitments.get(part.n))) return part;
    before = part.n;
  }
  return null;
}

export const erased = (n: number): PersonalPart => ({ n, erased: true });

export type PartState = "kept" | "erased" | "notIncluded";
export const stateOf = (part: PersonalPart | undefined): PartState =>
  part === undefined ? "notIncluded" : "erased" in part ? "erased" : "kept";

export type Client =
  /** `inHeader`: a record of format 1, which cannot lose it. */
  | { readonly state: "kept" | "inHeader"; readonly reference: string }
  | { readonly state: "erased" | "notIncluded" | "none" };

/** @param part the part 0 of the session, where there is one. */
export function clientOf(header: Header, part: PersonalPart | undefined): Client {
  if (header.formatVersion === 1) return { state: "inHeader", reference: header.input.clientReference };
  if (header.client === null) return { state: "none" };
  if (part === undefined) return { state: "notIncluded" };
  return "text" in part ? { state: "kept", reference: part.text } : { state: "erased" };
}

export const clientIn = (header: Header, personal: readonly PersonalPart[] | undefined): Client =>
  clientOf(
    header,
    personal?.find(({ n }) => n === 0),
  );

/** A session's input with what is still known of its client. */
export function inputWith(header: Header, client: Client): SessionInput {
  return "reference" in client ? { ...header.input, clientReference: client.reference } : header.input;
}

/** @returns null for what base64 would write otherwise: spare bits set, or no base64 at all (RFC 4648 section 3.5). */
export function bytesOfBase64(text: string): Uint8Array<ArrayBuffer> | null {
  try {
    const bytes = fromBase64(text);
    return toBase64(bytes) === text ? bytes : null;
  } catch {
    return null;
  }
}
