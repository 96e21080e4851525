/**
 * A voice whose time is the sound's time: an utterance takes as long as its clips, and ends when that much sound has
 * gone by. Nothing sounds; what would have sounded is told to `listen`.
 */
import type { Cue } from "../announcements/announce";
import { type ClipManifest, durationMs } from "../announcements/clips";
import { textOf } from "../announcements/utterance";
import type { SpokenEnd, Voice } from "../announcements/voice";

/** The speaker's own pause behind the last clip (src/announcements/speaker.ts). */
const afterMs = 150;

export interface TimedVoice extends Voice {
  /** Time stands at `nowMs` from the beginning of the sound; turns that have sounded long enough end, each at its own time. */
  passTo(nowMs: number): void;
  /** Time at which the last turn ended or was cut off; 0 before the first. */
  readonly silentSinceMs: number;
  readonly isSounding: boolean;
}

export function createTimedVoice(
  manifest: ClipManifest,
  listen: { cue(cue: Cue): void; cutOff(turn: number): void },
): TimedVoice {
  const heard = new Set<(text: string | null) => void>();
  const ended = new Set<(turn: number, end: SpokenEnd) => void>();
  let nowMs = 0;
  let silentSinceMs = 0;
  let sounding: { turn: number; untilMs: number } | null = null;

  const silence = (): void => {
    if (sounding) {
      listen.cutOff(sounding.turn);
      for (const each of heard) each(null);
    }
    sounding = null;
    silentSinceMs = nowMs;
  };
  const listenerOf =
    <L>(to: Set<L>) =>
    (each: L) => {
      to.add(each);
      return () => void to.delete(each);
    };

  return {
    prepare: async () => [],
    speak(turn, utterance) {
      silence();
      sounding = { turn, untilMs: nowMs + durationMs(utterance, manifest) + afterMs };
      for (const each of heard) each(textOf(utterance));
    },
    stop: silence,
    cue: (cue) => listen.cue(cue),
    changeVolume: (by) => by,
    duck: () => undefined,
    onSounding: listenerOf(heard),
    onEnded: listenerOf(ended),
    passTo(targetMs) {
      while (sounding && sounding.untilMs <= targetMs) {
        const { turn, untilMs } = sounding;
        nowMs = untilMs;
        silentSinceMs = untilMs;
        sounding = null;
        for (const each of heard) each(null);
        for (const each of ended) each(turn, "ended");
      }
      nowMs = targetMs;
    },
    get silentSinceMs() {
      return silentSinceMs;
    },
    get isSounding() {
      return sounding !== null;
    },
  };
}
