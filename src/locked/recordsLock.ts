/**
 * The lock of the records: a key pair. The public half lies open, so that a session can be sealed away while nobody knows
 * the passphrase; the private half lies locked with the passphrase (`lock`, purpose "records").
 */
import { fromBase64, type Locked, type LockedTrouble, lock, toBase64, unlock } from "./locked";
import { type Bytes, newOpeningPair, type OpeningPair, privateBytes, privateFrom } from "./sealTo";

export interface RecordsLock {
  readonly id: string;
  /** Rises with every lock of this device; the newest is the one that locks. */
  readonly order: number;
  /** 65 bytes in base64. */
  readonly publicKey: string;
  readonly wrapped: Locked;
}

export type MadeLock = { ok: true; lock: RecordsLock; pair: OpeningPair } | LockedTrouble;

/** @param work rounds of PBKDF2; fewer only in tests. */
export async function newRecordsLock(passphrase: string, order: number, work?: number): Promise<MadeLock> {
  const made = await newOpeningPair();
  const secret = await privateBytes(made);
  const wrapped = await lock("records", passphrase, secret, work);
  if (!wrapped.ok) return wrapped;
  const pair = { publicKey: made.publicKey, privateKey: await privateFrom(secret) };
  secret.fill(0);
  const publicKey = toBase64(pair.publicKey);
  return { ok: true, lock: { id: crypto.randomUUID(), order, publicKey, wrapped: wrapped.locked }, pair };
}

export type OpenedLock = { ok: true; pair: OpeningPair } | LockedTrouble;

export async function openLock({ publicKey, wrapped }: RecordsLock, passphrase: string): Promise<OpenedLock> {
  const opened = await unlock("records", passphrase, wrapped);
  if (!opened.ok) return opened;
  try {
    return { ok: true, pair: { publicKey: fromBase64(publicKey), privateKey: await privateFrom(opened.bytes) } };
  } catch {
    return { ok: false, code: "not-a-lock", message: "The lock of the records is damaged." };
  }
}

export type ChangedLock = { ok: true; lock: RecordsLock } | LockedTrouble;

/** The same key behind another passphrase: nothing that is locked has to be touched. */
export async function withPassphrase(
  before: RecordsLock,
  old: string,
  next: string,
  work?: number,
): Promise<ChangedLock> {
  const opened = await unlock("records", old, before.wrapped);
  if (!opened.ok) return opened;
  const wrapped = await lock("records", next, opened.bytes, work);
  opened.bytes.fill(0);
  return wrapped.ok ? { ok: true, lock: { ...before, wrapped: wrapped.locked } } : wrapped;
}

export const publicKeyOf = ({ publicKey }: RecordsLock): Bytes => fromBase64(publicKey);
