/** The log of this device: its key and its journal, and what its newest sessions left unready. */
import { deviceSigner, indexedDbJournal, type Journal, newSigner, type Signer, watchLosses } from "../log";
import { openLeftUnready, type ReadLeft } from "../log/leftUnready";
import { openVault, type Vault } from "../log/vault";

export interface Log {
  readonly journal: Journal;
  readonly signer: Signer;
  /** The lock of the records; null where nothing is kept beyond the page. */
  readonly vault: Vault | null;
  /** What each station was left with. */
  readonly left: ReadLeft;
}

export type OpenedLog = { ok: true; log: Log } | { ok: false; why: "noSigning" | "noStore" };

/**
 * Without a key that signs and a store that keeps, nothing may begin.
 * @param tellLost where the browser deleted what it had kept; in its own words.
 */
export async function deviceLog(tellLost: (why: string) => void): Promise<OpenedLog> {
  try {
    await newSigner();
  } catch {
    return { ok: false, why: "noSigning" };
  }
  try {
    watchLosses(tellLost);
    const signer = await deviceSigner();
    const vault = openVault();
    const journal = indexedDbJournal(signer, { vault });
    const readable = await journal.unfinished();
    // What a kill left between its seal and the lock.
    void vault.tidy().catch(() => undefined);
    return readable.ok
      ? { ok: true, log: { journal, signer, vault, left: openLeftUnready() } }
      : { ok: false, why: "noStore" };
  } catch {
    return { ok: false, why: "noStore" };
  }
}
