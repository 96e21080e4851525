/**
 * Listens to what the app plays: taps howler's master gain, behind every clip and earcon, and writes down how loud it is
 * twenty-five times a second, beside what the screen says is being spoken.
 */
import type { Page } from "playwright-core";

export interface Sounded {
  readonly text: string;
  /** Loudest and mean of the loudness while the text stood there: root mean square, 0..1. */
  readonly loudest: number;
  readonly mean: number;
  readonly durationMs: number;
}

/** Begins to listen. Call when the app has opened, before the first word. */
export const listenIn = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const here = globalThis as unknown as {
      Howler: { ctx: AudioContext; masterGain: GainNode };
      soundTrack: { atMs: number; text: string; rms: number }[];
    };
    const { ctx, masterGain } = here.Howler;
    const tap = ctx.createAnalyser();
    tap.fftSize = 1024;
    masterGain.connect(tap);
    const samples = new Float32Array(tap.fftSize);
    here.soundTrack = [];
    setInterval(() => {
      tap.getFloatTimeDomainData(samples);
      const rms = Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length);
      const text = document.querySelector('[data-testid="says"]')?.textContent ?? "";
      here.soundTrack.push({ atMs: performance.now(), text, rms });
    }, 40);
  });

/** One entry for each announcement, in order, with how it sounded. Silence between them is left out. */
export async function sounded(page: Page, silence: string): Promise<readonly Sounded[]> {
  const track = await page.evaluate(
    () => (globalThis as unknown as { soundTrack: { atMs: number; text: string; rms: number }[] }).soundTrack,
  );
  const turns: { text: string; rms: number[]; fromMs: number; toMs: number }[] = [];
  for (const { atMs, text, rms } of track) {
    const last = turns.at(-1);
    if (last?.text === text) {
      last.rms.push(rms);
      last.toMs = atMs;
    } else turns.push({ text, rms: [rms], fromMs: atMs, toMs: atMs });
  }
  return turns
    .filter(({ text }) => text !== silence && text !== "")
    .map(({ text, rms, fromMs, toMs }) => ({
      text,
      loudest: Math.max(...rms),
      mean: rms.reduce((sum, one) => sum + one, 0) / rms.length,
      durationMs: toMs - fromMs,
    }));
}
