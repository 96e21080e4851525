/** What the screens may ask for to hand a record over, and to judge one that is handed to them. `src/app` fills it in. */
import type { CheckedFile } from "../export/checkFile";
import type { PublicKey } from "../log";
import type { TrustedKey } from "../trust/trustedKeys";

export interface HandOver {
  /** Verifies a file in a thread of its own. Never rejects. */
  check(file: Blob): Promise<CheckedFile>;
  /** The key of this device; null where it has none. */
  readonly deviceKey: PublicKey | null;
  readonly trusted: { readonly now: readonly TrustedKey[]; subscribe(listen: () => void): () => void };
  /** @returns null once it is kept, or why not. */
  trust(name: string, key: string): "key-wrong" | "key-known" | "name-missing" | "list-full" | "notKept" | null;
  distrust(key: PublicKey): void;
  /** Hands a text over as a file. */
  save(name: string, text: string, type: string): void;
  /** The record as a page that verifies itself. @returns false where the page's template cannot be had. */
  savePage(name: string, recordText: string): Promise<boolean>;
}
