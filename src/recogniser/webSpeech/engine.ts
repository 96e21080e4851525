/** What stands behind a SpeechRecognition object: an engine that is opened, says what happens, and is stopped. */
import type { AddressWord, CommandId } from "../../intent/phrases";
import type { Heard, Rising } from "../heard";
import type { AvailabilityStatus, SpeechRecognitionErrorCode } from "./vocabulary";

export type EngineEvent =
  | { readonly type: "start" | "audiostart" | "soundstart" | "speechstart" | "speechend" | "soundend" | "audioend" }
  | { readonly type: "heard"; readonly heard: Heard }
  /** Where it was asked for: what is still being heard, or that it is nothing any more. */
  | { readonly type: "rising"; readonly address: AddressWord; readonly rising: Rising | null }
  | { readonly type: "failed"; readonly error: SpeechRecognitionErrorCode; readonly message: string }
  /** Sound is answered so much later than it should be. */
  | { readonly type: "behind"; readonly behindMs: number }
  /** The last event of a run, whatever ended it. */
  | { readonly type: "ended" };

export interface EngineRun {
  /** Hear no more, but answer for what was already heard; then `ended`. */
  stop(): void;
  /** Hear no more and say no more; then `ended`. */
  abort(): void;
  allow(permitted: Iterable<CommandId>, refusable?: Iterable<CommandId>): void;
}

export interface EngineOptions {
  /** BCP 47 tag. */
  readonly lang: string;
  /** False: one answer is wanted, and hearing nothing for a while is an error. */
  readonly continuous: boolean;
  /** What is still being heard is wanted, too. */
  readonly interim?: boolean;
  /** A live audio track, or null for the microphone. */
  readonly track: MediaStreamTrack | null;
}

export interface Engine {
  readonly biasesTowardsPhrases: boolean;
  /** For one language, on this device. */
  availability(lang: string): AvailabilityStatus;
  /** Makes one language ready; false if that failed. */
  install(lang: string): Promise<boolean>;
  /** Events come later, never from inside this call. */
  open(options: EngineOptions, listen: (event: EngineEvent) => void): EngineRun;
}
