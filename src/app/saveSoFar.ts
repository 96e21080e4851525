/**
 * What is kept of the running session, handed over as a file. The store is asked first, since only it holds what stands
 * beside the chain and knows what of that was erased. On a full disk Chromium may not open it even to read: then the
 * sealed record serves, or the signed entries as they were acknowledged. Pure but for what is handed in.
 */
import { recordOf, recordText, withoutPersonal } from "../export/recordFile";
import type { ReadSession, SignedSoFar } from "../log";
import type { SavedFile } from "../screen/model";

export interface SavingParts {
  readonly read: () => Promise<ReadSession>;
  /** Text of the sealed record; null before. */
  readonly sealed: string | null;
  readonly signed: () => SignedSoFar;
  /** Hands the text over; throws where it cannot. */
  readonly put: (text: string) => void;
}

/** Never rejects. */
export async function saveSoFar({ read, sealed, signed, put }: SavingParts): Promise<SavedFile> {
  const found = await read().catch(() => null);
  try {
    if (found?.ok) put(recordText(recordOf(found.kept)));
    else if (sealed !== null) put(sealed);
    else {
      put(recordText(signedRecord(signed())));
      return "signedOnly";
    }
    return "whole";
  } catch {
    return "none";
  }
}

const signedRecord = ({ header, entries, signatures }: SignedSoFar) =>
  withoutPersonal({ header, entries: [...entries], signatures: [...signatures], closing: null });
