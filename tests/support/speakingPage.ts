/** Runs in the page: measures every clip as this browser decodes it, and the speaker as it really sounds. */
import { Howler } from "howler";
import type { ClipManifest } from "../../src/announcements/clips";
import { createHowlerPlayer } from "../../src/announcements/howlerPlayer";
import { createLocalVoice } from "../../src/announcements/localVoice";
import { createSpeaker } from "../../src/announcements/speaker";
import type { Part } from "../../src/announcements/utterance";

const rateHz = 16_000;
const power = (samples: Float32Array): number =>
  samples.reduce((sum, x) => sum + x * x, 0) / Math.max(1, samples.length);
const toDb = (x: number): number => 10 * Math.log10(x + 1e-12);

export interface ClipLevel {
  readonly key: string;
  readonly insideDb: number;
  /** The 60 ms before and after, where nothing may sound. */
  readonly besideDb: number;
}

async function clipLevels(manifest: ClipManifest): Promise<readonly ClipLevel[]> {
  const decoder = new OfflineAudioContext(1, rateHz, rateHz);
  const levels: ClipLevel[] = [];
  for (const file of new Set(Object.values(manifest.clips).map((clip) => clip.file))) {
    const bytes = await (await fetch(`/clips/${file}`)).arrayBuffer();
    const samples = (await decoder.decodeAudioData(bytes)).getChannelData(0);
    const between = (fromMs: number, toMs: number) =>
      samples.subarray(Math.round((fromMs * rateHz) / 1_000), Math.round((toMs * rateHz) / 1_000));
    for (const [key, clip] of Object.entries(manifest.clips)) {
      if (clip.file !== file) continue;
      const endMs = clip.startMs + clip.durationMs;
      const beside = [between(clip.startMs - 80, clip.startMs - 20), between(endMs + 20, endMs + 80)];
      levels.push({
        key,
        insideDb: toDb(power(between(clip.startMs, endMs))),
        besideDb: Math.max(...beside.map((part) => toDb(power(part)))),
      });
    }
  }
  return levels;
}

/** Speaks aloud and listens at the speaker's own output. @returns how it ended, and how long it was heard. */
async function speak(manifest: ClipManifest, parts: readonly Part[]) {
  const player = createHowlerPlayer((file) => Object.values(manifest.clips).filter((clip) => clip.file === file), {
    clips: "/clips/",
    cues: "/cues/",
  });
  const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
  const voice = createSpeaker({ manifest: () => manifest, player, local: () => createLocalVoice("en"), wait });
  const failed = await voice.prepare([{ parts }]);
  const ear = Howler.ctx.createAnalyser();
  ear.fftSize = 512;
  Howler.masterGain.connect(ear);
  const frame = new Float32Array(ear.fftSize);
  let heardMs = 0;
  let last = performance.now();
  const watch = setInterval(() => {
    ear.getFloatTimeDomainData(frame);
    const now = performance.now();
    if (toDb(power(frame)) > -50) heardMs += now - last;
    last = now;
  }, 10);
  const began = performance.now();
  const end = await new Promise<string>((resolve) => {
    voice.onEnded((_, how) => resolve(how));
    voice.speak(1, { parts });
  });
  clearInterval(watch);
  return { end, failed, heardMs, tookMs: performance.now() - began, rateHz: Howler.ctx.sampleRate };
}

Object.assign(globalThis, { clipLevels, speak });
