/**
 * Clips and earcons through howler. It keeps an AudioContext of its own, apart from the one that hears: at the rate of
 * the clips, where the browser allows it, since decoded speech then takes a third of the memory.
 */
import { Howl, Howler } from "howler";
import { type CueId, cueIds } from "../../audio/cues/cues";
import type { Clip } from "./clips";
import type { ClipPlayer } from "./speaker";

const clipRateHz = 16_000;
/** Decoders differ by a few milliseconds in where an MP3 begins; there is silence around each clip. */
const marginMs = 15;
/** Without a loudspeaker, or before the first touch of the page, a context stands still and a sound never ends. */
const patienceMs = 3_000;

export interface Places {
  /** Folder of the sprite files, with its slash. */
  readonly clips: string;
  readonly cues: string;
}

const spriteName = (clip: Clip): string => String(clip.startMs);

/** A player that lets the ear know, sample for sample, what it plays; null where the browser cannot. */
export type HowlerPlayer = ClipPlayer & { readonly played: MediaStream | null };

/** @param clipsIn every clip of a sprite file. */
export function createHowlerPlayer(clipsIn: (file: string) => readonly Clip[], places: Places): HowlerPlayer {
  const cues = new Map(cueIds.map((cue) => [cue, new Howl({ src: [`${places.cues}${cue}.wav`], preload: false })]));
  ownContext();
  for (const howl of cues.values()) howl.load();
  const sprites = new Map<string, Howl>();
  let sounding: { howl: Howl; id: number; end: (ok: boolean) => void } | null = null;

  const spriteOf = (file: string): Howl => {
    const known = sprites.get(file);
    if (known) return known;
    const sprite = Object.fromEntries(
      clipsIn(file).map((clip): [string, [number, number]] => [
        spriteName(clip),
        [Math.max(0, clip.startMs - marginMs), clip.durationMs + 2 * marginMs],
      ]),
    );
    const howl = new Howl({ src: [`${places.clips}${file}`], sprite });
    sprites.set(file, howl);
    return howl;
  };

  const load = (file: string): Promise<{ ok: boolean }> => {
    const howl = spriteOf(file);
    if (howl.state() === "loaded") return Promise.resolve({ ok: true });
    return new Promise((resolve) => {
      howl.once("load", () => resolve({ ok: true }));
      howl.once("loaderror", () => {
        // Forgotten, so that the next time tries again.
        sprites.delete(file);
        resolve({ ok: false });
      });
    });
  };

  let stops = 0;
  const stop = (): void => {
    stops += 1;
    sounding?.howl.stop(sounding.id);
    sounding?.end(false);
    sounding = null;
  };

  return {
    played: playedStream(),
    load,
    async play(clip) {
      const stopsBefore = stops;
      const { ok } = await load(clip.file);
      if (!ok || stops !== stopsBefore) return { ok: false };
      const howl = spriteOf(clip.file);
      return new Promise((resolve) => {
        const id = howl.play(spriteName(clip));
        const tooLate = setTimeout(() => {
          howl.stop(id);
          end(false);
        }, clip.durationMs + patienceMs);
        const end = (isHeard: boolean): void => {
          clearTimeout(tooLate);
          if (sounding?.id === id) sounding = null;
          resolve({ ok: isHeard });
        };
        sounding = { howl, id, end };
        howl.once("end", () => end(true), id);
        howl.once("playerror", () => end(false), id);
      });
    },
    cue(cue: CueId) {
      cues.get(cue)?.play();
    },
    stop,
    setVolume: (volume) => void Howler.volume(volume),
  };
}

/** After the first Howl, since howler makes its context anew with that one; before any sound is decoded. */
function ownContext(): void {
  // Howler would suspend its context after thirty seconds of silence, and the next words would begin late.
  Howler.autoSuspend = false;
  try {
    const context = new AudioContext({ sampleRate: clipRateHz, latencyHint: "interactive" });
    const gain = context.createGain();
    gain.connect(context.destination);
    void Howler.ctx.close();
    Howler.ctx = context;
    Howler.masterGain = gain;
    void context.resume();
  } catch {
    // A browser that refuses the rate keeps howler's own context: more memory, the same sound.
  }
}

/** Everything that sounds, once more beside the loudspeaker. */
function playedStream(): MediaStream | null {
  try {
    const { ctx, masterGain } = Howler;
    const copy = ctx.createMediaStreamDestination();
    masterGain.connect(copy);
    return copy.stream;
  } catch {
    return null;
  }
}
