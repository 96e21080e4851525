/** What the ear reports. Times are milliseconds of sound since the ear was opened: sound in, the same answer out. */
import type { AddressWord, CommandId } from "../intent/phrases";

export type Heard =
  | {
      readonly kind: "understood";
      readonly address: AddressWord;
      readonly command: CommandId;
      /** 0..1, smoothed over the last steps. */
      readonly confidence: number;
      /** False for a command that is listened for only so that it can be refused aloud. */
      readonly permitted: boolean;
      readonly atMs: number;
    }
  /** Two commands were likely and neither enough, or one was said from too far away or in the companion's own words of just now: ask, do not guess. The likelier first. */
  | {
      readonly kind: "unsure";
      readonly address: AddressWord;
      readonly candidates: readonly CommandId[];
      /** 0..1, one for each candidate. */
      readonly confidences: readonly number[];
      readonly atMs: number;
    }
  /** Something came near to a phrase and was not one. */
  | { readonly kind: "noise"; readonly atMs: number };

/** The likeliest command while it is still being heard: it may become another, or nothing. For showing, never for acting. */
export interface Rising {
  readonly command: CommandId;
  /** 0..1, smoothed over the last steps. */
  readonly confidence: number;
}
