/** Every way a mixing question can be refused, each with a closed code. */
import type { Answer } from "../sums/answer";

export type MixCode =
  | "not-a-number"
  | "unknown-unit"
  | "not-positive"
  | "strength-impossible"
  | "units-do-not-meet"
  | "target-above-stock"
  | "too-much"
  | "never-mix";

export type MixAnswer<T> = Answer<T, MixCode>;
