/**
 * What a journal needs from a disk: a few acts, each of them whole or not at all. The rules of the journal stand above
 * (journalOver), the same for memory, IndexedDB and files; a store only keeps.
 */
import type { Batch } from "./batch";
import type { Digest } from "./canonical";
import type { Header, Signature } from "./header";
import type { JournalTrouble } from "./journal";
import type { Client, OpenedRecord, PersonalPart } from "./personal";
import type { Closing } from "./seal";

export type Done = { ok: true } | JournalTrouble;

/** Which pen writes, and where it believes the session ends. A store refuses a pen that is not the session's own. */
export type PenAt = { session: string; pen: string; count: number };

export type SessionRow = { session: string; header: Header; head: Digest; count: number };
/** `order` rises with the sessions of this store, whatever the wall clock did. */
export type ListedRow = SessionRow & { client: Client; order: number };

export interface EntryStore {
  create(opening: OpenedRecord, head: Digest, signature: Signature, pen: string): Promise<Done>;
  /** All entries of the batch and what is kept beside them, durably, or none. */
  add(at: PenAt, batch: Batch, parts: readonly PersonalPart[]): Promise<Done>;
  close(at: PenAt, closing: Closing): Promise<Done>;
  /** Makes this pen the only one, or `other-writer` while another lives. */
  takePen(session: string, pen: string): Promise<Done>;
  dropPen(session: string, pen: string): Promise<void>;
  /** Puts `erased` where these parts stood; what was there is nowhere in the store any more. */
  erase(session: string, places: readonly number[]): Promise<Done>;
  /** Everything kept of a session, not yet believed: the shape of `KeptSession`. */
  load(session: string): Promise<{ ok: true; stored: unknown } | JournalTrouble>;
  /** Every session, sealed or not, newest first. */
  all(): Promise<{ ok: true; rows: readonly ListedRow[] } | JournalTrouble>;
  /** Sessions without a closing, newest first. */
  unfinished(): Promise<{ ok: true; rows: readonly ListedRow[] } | JournalTrouble>;
  /** Head of the newest session at this station; null where there is none. */
  newestHead(station: string): Promise<{ ok: true; head: Digest | null } | JournalTrouble>;
}
