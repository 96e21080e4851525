/** A session of this device as the studio's sums need it: when it began, what was handed over, and what happened. */
import type { SessionFact } from "../session/fact";
import type { SessionInput } from "../session/sessionInput";

export type KeptRecord = {
  readonly session: string;
  /** When it began, epoch ms. */
  readonly atMs: number;
  readonly input: SessionInput;
  readonly facts: readonly SessionFact[];
};
