/** What the page of keeping may ask of the device. `src/app` fills it in. */
import type { Counts } from "../../backup/lines";
import type { Restored } from "../../backup/restore";
import type { BackupRefused } from "../../backup/trouble";
import type { Progress } from "../../backup/writeBackup";
import type { Vault } from "../../log/vault";

export type BackedUp =
  | { readonly ok: true; readonly counts: Counts; readonly damaged: number; readonly bytes: number }
  | BackupRefused;

export interface Keeping {
  /** The lock of the records; null where there is none to set. */
  readonly vault: Vault | null;
  /** Whether the browser promised not to clear this away; null where it does not say. */
  isPromised(): Promise<boolean | null>;
  askPromise(): Promise<boolean | null>;
  room(): Promise<{ readonly usedBytes: number; readonly ofBytes: number } | null>;
  /** Hands the file over when it is whole. */
  backUp(passphrase: string, progress: Progress): Promise<BackedUp>;
  restore(file: Blob, passphrase: string, progress: Progress): Promise<Restored>;
}
