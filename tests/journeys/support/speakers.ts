/** Listens to what a page plays: every sound on its way to a destination passes an ear of ours, with the words shown. */
import type { BrowserContext, Page } from "playwright-core";

/** One announcement as it stood on the screen, and the loudest sample that sounded meanwhile. */
export interface Announced {
  readonly text: string;
  /** 0..1 */
  readonly peak: number;
}

export async function hearTheSpeakers(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const ears: AnalyserNode[] = [];
    const announced: { text: string; peak: number }[] = [];
    Object.assign(globalThis, { announced });
    const connect = AudioNode.prototype.connect;
    AudioNode.prototype.connect = function (this: AudioNode, ...given: unknown[]) {
      if (given[0] instanceof AudioDestinationNode) {
        const ear = this.context.createAnalyser();
        ear.fftSize = 8192;
        Reflect.apply(connect, this, [ear]);
        ears.push(ear);
      }
      return Reflect.apply(connect, this, given);
    } as typeof connect;
    const samples = new Float32Array(8192);
    const loudest = (): number => {
      let peak = 0;
      for (const ear of ears) {
        ear.getFloatTimeDomainData(samples);
        for (const sample of samples) peak = Math.max(peak, Math.abs(sample));
      }
      return peak;
    };
    setInterval(() => {
      const says = document.querySelector('[data-testid="says"]');
      const isSpeaking = says?.parentElement?.hasAttribute("data-speaking") ?? false;
      const text = isSpeaking ? (says?.textContent ?? "") : "";
      const last = announced.at(-1);
      if (last?.text !== text) announced.push({ text, peak: 0 });
      const now = announced.at(-1);
      if (now && text !== "") now.peak = Math.max(now.peak, loudest());
    }, 100);
  });
}

/** What was announced so far, in order; silence left out. */
export const announcedOn = async (page: Page): Promise<readonly Announced[]> => {
  const all = await page.evaluate(
    () => (globalThis as unknown as { announced: { text: string; peak: number }[] }).announced,
  );
  return all.filter(({ text }) => text !== "");
};
