/** Words of listening: what it is told, what it orders and states, what it remembers. No xstate here. */
import type { CommandId } from "../../src/intent/phrases";

/** Milliseconds of witnessed monotonic time. */
export type Ms = number;

/** The first wait before the microphone is tried again; each later one is twice as long, up to the longest. */
export const firstWaitMs = 1_000;
export const longestWaitMs = 8_000;
/** An attempt to reopen that has not answered by then has failed: no permission is asked for the second time. */
export const attemptMs = 10_000;
/** A question about two phrases that nobody answers is dropped. */
export const doubtMs = 8_000;

export type RefusedBecause = "denied" | "no-device" | "busy" | "unsupported" | "failed";
export type LostBecause = RefusedBecause | "ended" | "muted" | "suspended" | "no-frames" | "recogniser";

export type ListeningEvent =
  /** The artist wants to be heard, or not. Also "try again now". */
  | { type: "listen.start" }
  | { type: "listen.stop" }
  | { type: "microphone.opened" }
  | { type: "microphone.refused"; reason: RefusedBecause }
  | { type: "microphone.lost"; reason: LostBecause }
  /** Speech began or ended, by its loudness alone. */
  | { type: "sound.started" }
  | { type: "sound.ended" }
  | { type: "phrase.understood" }
  | { type: "phrase.unsure"; candidates: readonly CommandId[] }
  /** Monotonic time witnessed since the last one. */
  | { type: "time.witnessed"; elapsedMs: Ms };

/** What the app is to do, and what it is to say and show. */
export type ListeningOrder =
  | { type: "microphone.open" }
  | { type: "microphone.close" }
  /** Said at once, once; the screen goes on showing it. */
  | { type: "ear.lost"; reason: LostBecause }
  | { type: "ear.back"; lostForMs: Ms };

export interface ListeningMemory {
  /** Why nothing is heard; null while something is. */
  readonly lostBecause: LostBecause | null;
  readonly lostForMs: Ms;
  /** Time in the present state of waiting: for the next attempt, for its answer, or for an answer to a question. */
  readonly waitedMs: Ms;
  readonly nextWaitMs: Ms;
  readonly candidates: readonly CommandId[];
}
