/**
 * Speaks an utterance as a seamless row of clips. Text without a clip goes to a local voice of the system where there
 * is one, and is spelled by clips where there is none. Players are handed in, so that the row itself can be tested.
 */
import type { Cue } from "./announce";
import { type Clip, type ClipManifest, clipsOf, filesOf, type Piece } from "./clips";
import type { SpokenEnd, Voice } from "./voice";

/** Plays one sound at a time. `ok: false` when it could not sound. */
export interface ClipPlayer {
  load(file: string): Promise<{ ok: boolean }>;
  play(clip: Clip): Promise<{ ok: boolean }>;
  cue(cue: Cue): void;
  stop(): void;
  /** 0..1 */
  setVolume(volume: number): void;
}

/** Free text by the system's own voice. */
export interface LocalVoice {
  /** False where the system has no voice that stays on the device. */
  isThere(): boolean;
  say(text: string, volume: number): Promise<{ ok: boolean }>;
  stop(): void;
}

export interface SpeakerParts {
  /** Asked anew for each utterance: the language may have changed. */
  readonly manifest: () => ClipManifest;
  readonly player: ClipPlayer;
  readonly local: () => LocalVoice;
  /** Waits, in real milliseconds. */
  readonly wait: (ms: number) => Promise<void>;
}

/** Quieter steps lie further apart to the ear; the first is still heard in a silent room. */
const volumes = [0.2, 0.35, 0.5, 0.7, 1] as const;
const volumeAtStart = 3;
const duckedShare = 0.3;
const wordPauseMs = 20;
/** After the last sound, so that two turns do not run together. */
const afterMs = 150;

export function createSpeaker({ manifest, player, local, wait }: SpeakerParts): Voice {
  const sounding = new Set<(text: string | null) => void>();
  const ended = new Set<(turn: number, end: SpokenEnd) => void>();
  let current: { turn: number } | null = null;
  let step: number = volumeAtStart;
  let isDucked = false;

  const volume = (): number => (volumes[step] ?? 1) * (isDucked ? duckedShare : 1);

  const playAll = async (clips: readonly Clip[], goesOn: () => boolean): Promise<boolean> => {
    for (const [place, clip] of clips.entries()) {
      if (place > 0) await wait(wordPauseMs);
      if (!goesOn()) return false;
      if (!(await player.play(clip)).ok) return false;
    }
    return true;
  };

  const playPiece = async (piece: Piece, goesOn: () => boolean): Promise<boolean> => {
    if (piece.say === "clip") return playAll([piece.clip], goesOn);
    if (local().isThere()) return (await local().say(piece.text, volume())).ok;
    return piece.spelled.length > 0 && (await playAll(piece.spelled, goesOn));
  };

  const run = async (turn: number, pieces: readonly Piece[]): Promise<void> => {
    const mine = { turn };
    current = mine;
    const goesOn = () => current === mine;
    let end: SpokenEnd = "ended";
    for (const piece of pieces) {
      if (piece.pauseBeforeMs > 0) await wait(piece.pauseBeforeMs);
      if (!goesOn()) return;
      for (const listen of sounding) listen(piece.text);
      if (!(await playPiece(piece, goesOn))) end = "failed";
      if (!goesOn()) return;
    }
    await wait(afterMs);
    if (!goesOn()) return;
    current = null;
    for (const listen of sounding) listen(null);
    for (const listen of ended) listen(turn, end);
  };

  const silence = (): void => {
    if (current !== null) for (const listen of sounding) listen(null);
    current = null;
    player.stop();
    local().stop();
  };

  player.setVolume(volume());
  return {
    async prepare(utterances) {
      const files = [...new Set(utterances.flatMap((utterance) => filesOf(utterance, manifest())))];
      const loaded = await Promise.all(files.map(async (file) => ({ file, ...(await player.load(file)) })));
      return loaded.filter(({ ok }) => !ok).map(({ file }) => file);
    },
    speak(turn, utterance) {
      if (current !== null) silence();
      void run(turn, clipsOf(utterance, manifest()));
    },
    stop: silence,
    cue: (cue) => player.cue(cue),
    changeVolume(by) {
      const wanted = step + (by === "louder" ? 1 : -1);
      if (wanted < 0) return "quietest";
      if (wanted >= volumes.length) return "loudest";
      step = wanted;
      player.setVolume(volume());
      return by;
    },
    duck(to) {
      isDucked = to;
      player.setVolume(volume());
    },
    onSounding(listen) {
      sounding.add(listen);
      return () => sounding.delete(listen);
    },
    onEnded(listen) {
      ended.add(listen);
      return () => ended.delete(listen);
    },
  };
}
