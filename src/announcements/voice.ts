/** What the announcing chart needs of a voice. The real one is speaker.ts; its scripted twin is in tests/support. */
import type { Cue } from "./announce";
import type { Phrasebook } from "./phrasebook";
import type { Utterance } from "./utterance";

export type Stop = () => void;

export type SpokenEnd = "ended" | "failed";

export interface Voice {
  /** Loads what these utterances need, so that they sound at once. @returns files that could not be loaded. */
  prepare(utterances: readonly Pick<Utterance, "parts">[]): Promise<readonly string[]>;
  /** Begins at once; whatever sounded before is stopped, and its turn ends unheard. */
  speak(turn: number, utterance: Pick<Utterance, "parts">): void;
  stop(): void;
  /** Sounds over speech, at once. */
  cue(cue: Cue): void;
  /** @returns what to say about it: it may be at its loudest already. */
  changeVolume(by: "louder" | "quieter"): keyof Phrasebook["volume"];
  /** Softer while somebody speaks to the companion. */
  duck(isDucked: boolean): void;
  /**
   * Each piece of a turn as it begins to sound, so that the ear knows which words are in the room just now; null when
   * nothing sounds any more, whether it has ended or was cut off.
   */
  onSounding(listen: (text: string | null) => void): Stop;
  onEnded(listen: (turn: number, end: SpokenEnd) => void): Stop;
}
