/** What can go wrong with a backup, as a value. */
import { BackupTrouble } from "./container";

export type BackupCode = BackupTrouble["code"] | "storage-full" | "storage-lost";
export type BackupRefused = { readonly ok: false; readonly code: BackupCode; readonly message: string };

export function asBackupTrouble(error: unknown): BackupRefused {
  if (error instanceof BackupTrouble) return { ok: false, code: error.code, message: error.message };
  const { name, message } = error as Error;
  if (name === "QuotaExceededError")
    return { ok: false, code: "storage-full", message: "The device has no room left. Nothing was changed." };
  // Streams tell by a TypeError that what was packed is not; text, that it is no UTF-8.
  if (error instanceof TypeError)
    return { ok: false, code: "not-a-backup", message: "What it holds cannot be unpacked. Nothing was taken from it." };
  return {
    ok: false,
    code: "storage-lost",
    message: `The store does not answer. Nothing was changed. ${name}: ${message}`,
  };
}
