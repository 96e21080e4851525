/** What the screens see of the studio's keeping. `src/app` fills it in; everything in `studio` is on disk. */
import type { Part } from "../../announcements/utterance";
import type { Change } from "../../studio/kinds";
import type { KeptRecord } from "../../studio/record";
import type { RowName, Studio } from "../../studio/studio";
import type { Answer } from "../../sums/answer";

export type StudioNow =
  | { readonly at: "opening" }
  | { readonly at: "lost"; readonly words: string }
  | {
      readonly at: "open";
      readonly studio: Studio;
      readonly unreadable: readonly RowName[];
      /** What the last act was, while it can still be taken back. */
      readonly undo: string | null;
    };

export interface SessionListed {
  readonly session: string;
  readonly atMs: number;
  /** Null where it was erased or never given. */
  readonly clientReference: string | null;
}

export interface StudioModel {
  readonly now: StudioNow;
  /** What is being said, as text; null in silence. */
  readonly saying: string | null;
  subscribe(listen: () => void): () => void;
  /** All or nothing. @param act what it was, for the offer to undo. @returns null once it is on disk, or why not. */
  keep(act: string, changes: readonly Change[]): Promise<string | null>;
  /** The same for what is kept while somebody types: the undo on offer stays, unless it is of the same rows. */
  keepQuietly(changes: readonly Change[]): Promise<string | null>;
  /** Puts back what was before the last act. */
  undo(): Promise<string | null>;
  /** Sessions on this device, newest first. */
  sessions(): Promise<Answer<readonly SessionListed[], string>>;
  /** Those begun at or after `sinceMs`, with their facts. */
  records(sinceMs: number): Promise<Answer<readonly KeptRecord[], string>>;
  say(parts: readonly Part[]): void;
  hush(): void;
}
