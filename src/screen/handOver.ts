/** What the screens may ask for to hand a record over, and to judge one that is handed to them. `src/app` fills it in. */
import type { CheckedFile } from "../export/checkFile";
import type { RecordFile } from "../export/recordFile";
import type { PublicKey } from "../log";

export interface HandOver {
  /** Verifies a file in a thread of its own. @param trusted beside this device's own key. Never rejects. */
  check(file: Blob, trusted: readonly PublicKey[]): Promise<CheckedFile>;
  /** The key of this device; null where it has none. */
  readonly deviceKey: PublicKey | null;
  /** Hands a text over as a file. */
  save(name: string, text: string, type: string): void;
  /** The record as a page that verifies itself. @returns false where the page's template cannot be had. */
  savePage(name: string, recordText: string): Promise<boolean>;
  /** The record whose accident is about to be reported: carried from page to page, in memory alone. */
  readonly ofAccident: { readonly now: RecordFile | null; put(record: RecordFile | null): void };
}
