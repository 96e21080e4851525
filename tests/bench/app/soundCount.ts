/** Counts, in the page, the sound that never arrived: frames missing between two hand-overs, and answers that came late. */
import type { BrowserContext, Page } from "playwright-core";

export interface SoundCount {
  /** Frames handed over by the audio thread. */
  readonly frames: number;
  /** Frames that lie between two hand-overs and are in neither. */
  readonly droppedFrames: number;
  /** How often the recogniser said that it was behind. */
  readonly behind: number;
}

export async function countSound(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const count = { frames: 0, droppedFrames: 0, behind: 0 };
    Object.assign(globalThis, { soundCount: count });
    const Node = AudioWorkletNode;
    globalThis.AudioWorkletNode = class extends Node {
      constructor(...given: ConstructorParameters<typeof AudioWorkletNode>) {
        super(...given);
        let next: number | null = null;
        this.port.addEventListener("message", ({ data }) => {
          if (typeof data?.firstFrame !== "number") return;
          if (next !== null) count.droppedFrames += data.firstFrame - next;
          count.frames += data.samples.length;
          next = data.firstFrame + data.samples.length;
        });
      }
    };
    const Thread = Worker;
    globalThis.Worker = class extends Thread {
      constructor(...given: ConstructorParameters<typeof Worker>) {
        super(...given);
        this.addEventListener("message", ({ data }) => {
          if (data?.type === "behind") count.behind += 1;
        });
      }
    };
  });
}

export const soundCounted = (page: Page): Promise<SoundCount> =>
  page.evaluate(() => ({ ...(globalThis as unknown as { soundCount: SoundCount }).soundCount }));
