/** A voice on paper: it takes the time that the clips would take, and remembers what it was told. Time is given to it. */
import { type ClipManifest, durationMs } from "../../src/announcements/clips";
import { textOf } from "../../src/announcements/utterance";
import type { SpokenEnd, Voice } from "../../src/announcements/voice";

export interface ScriptedVoice extends Voice {
  /** "said", "cut", or the earcon's name, with the time of each. */
  readonly story: readonly { readonly atMs: number; readonly what: string; readonly text: string }[];
  /** Lets time pass; ends the turn that has sounded long enough. */
  pass(ms: number): void;
}

export function createScriptedVoice(manifest: ClipManifest): ScriptedVoice {
  const story: { atMs: number; what: string; text: string }[] = [];
  const heard = new Set<(text: string | null) => void>();
  const ended = new Set<(turn: number, end: SpokenEnd) => void>();
  let nowMs = 0;
  let sounding: { turn: number; text: string; untilMs: number } | null = null;

  const tell = (what: string, text = "") => story.push({ atMs: nowMs, what, text });
  const listener =
    <L>(to: Set<L>) =>
    (listen: L) => {
      to.add(listen);
      return () => void to.delete(listen);
    };

  return {
    story,
    prepare: async () => [],
    speak(turn, utterance) {
      const text = textOf(utterance);
      if (sounding) tell("cut", sounding.text);
      sounding = { turn, text, untilMs: nowMs + durationMs(utterance, manifest) };
      tell("said", text);
      for (const listen of heard) listen(text);
    },
    stop() {
      if (sounding) {
        tell("cut", sounding.text);
        for (const listen of heard) listen(null);
      }
      sounding = null;
    },
    cue: (cue) => void tell(cue),
    changeVolume: (by) => by,
    duck: () => undefined,
    onSounding: listener(heard),
    onEnded: listener(ended),
    pass(ms) {
      const targetMs = nowMs + ms;
      while (sounding && sounding.untilMs <= targetMs) {
        const { turn, untilMs } = sounding;
        nowMs = untilMs;
        sounding = null;
        for (const listen of heard) listen(null);
        for (const listen of ended) listen(turn, "ended");
      }
      nowMs = targetMs;
    },
  };
}
