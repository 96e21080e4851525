/**
 * Where facts are kept. Nothing may be shown or spoken as done before `append` has answered `ok`, and a batch is kept
 * whole or not at all. One writer for a session: a second one is refused, and one that lost its place cannot write.
 */
import type { SessionFact } from "../session/fact";
import type { Digest } from "./canonical";
import type { LogEntry, Stamp } from "./entry";
import type { Header, PublicKey, Signature } from "./header";
import type { Attachment, Client, OpenedRecord, PersonalPart } from "./personal";
import type { Closing } from "./seal";

export type JournalTroubleCode =
  /** No room left on the device. */
  | "storage-full"
  /** The store does not answer, was closed or was cleared. */
  | "storage-lost"
  /** The key of this device cannot sign. */
  | "key-lost"
  /** Another page or process writes this session. */
  | "other-writer"
  | "session-unknown"
  | "session-exists"
  /** Sealed: nothing more can be added. */
  | "session-sealed"
  /** It lies under the lock of the records; the passphrase opens it. */
  | "records-locked"
  /** What is kept does not hold together; `message` says where. */
  | "damaged"
  /** Not a fact, header or stamp of this format: our own mistake, kept from the disk. */
  | "not-a-fact";

export type JournalTrouble = { ok: false; code: JournalTroubleCode; message: string };
export type Appended = { ok: true; entries: readonly LogEntry[] } | JournalTrouble;

/** A session as it is kept: `signatures[0]` signs the header, `signatures[n]` the head after entry n. */
export type KeptSession = {
  header: Header;
  entries: readonly LogEntry[];
  signatures: readonly Signature[];
  /** The last head. */
  head: Digest;
  /** Summary and seal once the session is finished. */
  closing: Closing | null;
  /** Beside the chain: what of its commitments is kept here, or was erased. In order. */
  personal: readonly PersonalPart[];
};

/** What is acknowledged of a session, as it is held in memory: nothing personal that stands beside the chain. */
export type SignedSoFar = Pick<KeptSession, "header" | "entries" | "signatures">;

/** The one pen of a session. Appends queue up behind each other. */
export interface Writer {
  readonly session: string;
  /** Head after the last kept entry. */
  readonly head: Digest;
  /** Entries kept so far. */
  readonly count: number;
  /** All that is kept so far, for when the store does not answer; it is not asked. */
  readonly signed: SignedSoFar;
  /** Holds what a fact of the next append commits to; it is kept with that fact or not at all. */
  attach(note: Digest, attachment: Attachment): void;
  /** Keeps all facts of one event, or none. No facts: `ok` at once, nothing written. Never rejects. */
  append(facts: readonly SessionFact[], stamp: Stamp): Promise<Appended>;
  /** Keeps the closing; the session is then no longer among the unfinished and takes nothing more. */
  finish(closing: Closing): Promise<{ ok: true } | JournalTrouble>;
  /** Puts the pen down without finishing; the session can be resumed. */
  release(): Promise<void>;
}

/** Signs with the key of this device, which never leaves it. */
export interface Signer {
  readonly publicKey: PublicKey;
  sign(message: Uint8Array): Promise<Signature>;
}

export type Opened = { ok: true; writer: Writer } | JournalTrouble;
export type ResumedSession = { ok: true; writer: Writer; kept: KeptSession } | JournalTrouble;
export type ReadSession = { ok: true; kept: KeptSession } | JournalTrouble;

/** `order` rises with the sessions of this device, whatever the wall clock did. */
export type ListedSession = { session: string; header: Header; entries: number; client: Client; order: number };

export interface Journal {
  /** Begins a session. The header is on disk, signed, when this answers `ok`. */
  open(opening: OpenedRecord): Promise<Opened>;
  /** Takes up an unfinished session after its chain has been checked. */
  resume(session: string): Promise<ResumedSession>;
  read(session: string): Promise<ReadSession>;
  /** Every session of this device, sealed or not, newest first; `read` gives what is in it. */
  all(): Promise<{ ok: true; sessions: readonly ListedSession[] } | JournalTrouble>;
  /** Sessions to resume, newest first. */
  unfinished(): Promise<{ ok: true; sessions: readonly ListedSession[] } | JournalTrouble>;
  /**
   * Erases personal parts for good, of a session that goes on or is sealed; what is not kept is passed over. The chain
   * stays as it is. @param places numbers as in `PersonalPart`.
   */
  erase(session: string, places: readonly number[]): Promise<{ ok: true } | JournalTrouble>;
  /** Head of the newest session at this station, for the next header; null where there is none. */
  lastHead(station: string): Promise<{ ok: true; head: Digest | null } | JournalTrouble>;
}
