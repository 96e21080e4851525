/** What a source of sound says while it is open: a microphone, a recording that is played, or a script in a test. */

export type RefusedBecause = "denied" | "no-device" | "busy" | "unsupported" | "failed";
export type LostBecause = "ended" | "muted" | "suspended" | "no-frames";

export type SoundEvent =
  /** `sampleRateHz` of the sound that follows; `label` of the device as the browser gives it. */
  | { readonly type: "opened"; readonly rateHz: number; readonly label: string; readonly processing: Processing }
  | { readonly type: "refused"; readonly reason: RefusedBecause; readonly message: string }
  /**
   * Mono, −1..1. The receiver owns the arrays. `played`: what this page itself sent to the loudspeaker meanwhile, as many
   * samples, where it is known; its echo may be in `samples` now or a little later.
   */
  | { readonly type: "sound"; readonly samples: Float32Array; readonly played?: Float32Array | null }
  /** About ten times a second. Linear, 0..1: root mean square and largest magnitude since the last. */
  | { readonly type: "level"; readonly rms: number; readonly peak: number }
  /** Sound that never arrived: how much, and how much since opening. `isHere`: what comes next does not join what came. */
  | { readonly type: "dropped"; readonly lostMs: number; readonly totalMs: number; readonly isHere: boolean }
  | { readonly type: "lost"; readonly reason: LostBecause }
  | { readonly type: "back" }
  /** The last event: the recording has ended, or the source was closed. */
  | { readonly type: "closed" };

/** What the browser really does to the sound, whatever was asked of it; undefined where it does not say. */
export interface Processing {
  readonly echoCancellation: boolean | undefined;
  readonly noiseSuppression: boolean | undefined;
  readonly autoGainControl: boolean | undefined;
}

export interface OpenSound {
  close(): void;
}

/** Something that can be listened to. Events come later, never from inside `open`. */
export interface SoundSource {
  /** @param track A live audio track to listen to instead of the source's own, or null. */
  open(track: MediaStreamTrack | null, listen: (event: SoundEvent) => void): OpenSound;
}
