/** Words of announcing: what it hears, what it asks of the voice, and how long things may wait. No xstate here. */
import type { Utterance } from "../../src/announcements/utterance";

/** Milliseconds of witnessed monotonic time. */
export type Ms = number;

/** What is not urgent waits this long for a pause in the talk, then is said anyway. */
export const holdMs = 10_000;
/** Silence this long is a pause: longer than the gap between turns, about 200 ms (Stivers et al. 2009), and than a breath. */
export const pauseMs = 700;
/** Clock moments wait this long for others to fall together with them. Late is safe; our choice. */
export const gatherMs = 3_000;
/** Silence that was asked for lasts this long. Time for a word with the client; our choice. */
export const hushMs = 5_000;
/** A voice that has not ended by then is taken for dead, and the next may speak. Our longest sentence lasts under 20 s. */
export const longestMs = 60_000;

export type AnnouncingEvent =
  /** What one kept event gave to say, in order. */
  | { type: "announce"; utterances: readonly Utterance[] }
  | { type: "announcement.repeat" }
  /** The artist wants silence. What matters is held and said again; the rest is dropped. */
  | { type: "announcement.hush" }
  /** No longer so: not said any more, cut off if it is being said. */
  | { type: "announcement.withdraw"; key: string }
  | { type: "voice.ended"; turn: number }
  | { type: "voice.failed"; turn: number }
  /** People in the room; never the companion itself. */
  | { type: "talk.started" }
  | { type: "talk.ended" }
  | { type: "time.witnessed"; elapsedMs: Ms };

export type AnnouncingOrder =
  | { type: "voice.speak"; turn: number; utterance: Utterance }
  | { type: "voice.stop"; turn: number };

export interface Waiting {
  readonly utterance: Utterance;
  /** Below zero while it is held back because silence was asked for. */
  readonly waitedMs: Ms;
}

export interface Speaking {
  readonly turn: number;
  readonly utterance: Utterance;
  readonly forMs: Ms;
  /** Replaced or withdrawn while it sounds. */
  readonly obsolete: boolean;
}

export interface AnnouncingMemory {
  readonly language: string;
  readonly waiting: readonly Waiting[];
  readonly speaking: Speaking | null;
  /** The last that began to sound, for "say it again". */
  readonly last: Utterance | null;
  /** Turns taken so far; an end that belongs to an older turn is nobody's. */
  readonly turn: number;
  /** People are talking now; how long they have not been. */
  readonly isTalk: boolean;
  readonly quietMs: Ms;
}
