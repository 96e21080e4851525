/**
 * What comes into a page by its microphone and what leaves it by its loudspeaker, block by block and by one clock: two taps
 * in the audio threads of the page itself, told at each block of 128 samples. The page's own capture is counted, too.
 */
import type { BrowserContext, Page } from "playwright-core";

/** One block: when it was rendered, milliseconds since 1970, and its largest magnitude. */
export type Block = readonly [atMs: number, peak: number];

interface Within {
  mic: [number, number][];
  out: [number, number][];
  /** Of the loudspeaker's context; what is rendered leaves so much later. */
  outputLatencyMs: number;
  /** Samples that the page's capture handed over, and those it skipped. */
  captured: number;
  skipped: number;
  rateHz: number;
}

export interface Tapped {
  readonly mic: readonly Block[];
  /** When the block left: rendered, and the output's own latency later. */
  readonly out: readonly Block[];
  readonly outputLatencyMs: number;
  readonly capturedMs: number;
  readonly skippedMs: number;
}

/** Call before the page opens. The context needs `bypassCSP`: the taps are worklets from a blob. */
export async function tapEverything(context: BrowserContext): Promise<void> {
  // What runs this file names functions by a call that a page does not know.
  await context.addInitScript("globalThis.__name = (one) => one");
  await context.addInitScript(() => {
    const within: Within = { mic: [], out: [], outputLatencyMs: 0, captured: 0, skipped: 0, rateHz: 0 };
    Object.assign(globalThis, { within });
    const code = `registerProcessor("tap", class extends AudioWorkletProcessor {
      process([input]) {
        let peak = 0;
        for (const x of input?.[0] ?? []) peak = Math.max(peak, Math.abs(x));
        this.port.postMessage([Date.now(), peak]);
        return true;
      }
    })`;
    const module = () => URL.createObjectURL(new Blob([code], { type: "text/javascript" }));
    const tap = async (context: AudioContext, source: AudioNode, into: [number, number][]) => {
      await context.audioWorklet.addModule(module());
      const node = new AudioWorkletNode(context, "tap");
      node.port.onmessage = ({ data }) => void into.push(data);
      source.connect(node).connect(context.destination);
    };
    const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
    navigator.mediaDevices.getUserMedia = async (wanted) => {
      const stream = await ask(wanted);
      if (stream.getAudioTracks().length > 0) {
        const context = new AudioContext({ latencyHint: "interactive" });
        await tap(context, context.createMediaStreamSource(stream.clone()), within.mic);
        await context.resume();
      }
      return stream;
    };
    const Given = globalThis.AudioWorkletNode;
    globalThis.AudioWorkletNode = class extends Given {
      constructor(context: BaseAudioContext, name: string, options?: AudioWorkletNodeOptions) {
        super(context, name, options);
        if (name !== "capture") return;
        let next: number | null = null;
        within.rateHz = context.sampleRate;
        this.port.addEventListener("message", ({ data }) => {
          within.skipped += next === null ? 0 : Math.max(0, data.firstFrame - next);
          within.captured += data.samples.length;
          next = data.firstFrame + data.samples.length;
        });
      }
    };
    const waiting = setInterval(() => {
      const { Howler } = globalThis as unknown as { Howler?: { ctx?: AudioContext; masterGain?: GainNode } };
      if (!Howler?.ctx || !Howler.masterGain || Howler.ctx.sampleRate !== 16_000) return;
      clearInterval(waiting);
      const { ctx, masterGain } = Howler;
      void tap(ctx, masterGain, within.out);
      setInterval(() => {
        within.outputLatencyMs = 1000 * (ctx.outputLatency || ctx.baseLatency);
      }, 500);
    }, 100);
  });
}

export async function tapped(page: Page): Promise<Tapped> {
  const within = await page.evaluate(() => (globalThis as unknown as { within: Within }).within);
  const { outputLatencyMs, rateHz } = within;
  return {
    mic: within.mic,
    out: within.out.map(([atMs, peak]) => [atMs + outputLatencyMs, peak]),
    outputLatencyMs,
    capturedMs: (within.captured * 1000) / rateHz,
    skippedMs: (within.skipped * 1000) / rateHz,
  };
}

/** Where sound above `level` ends and nothing above it comes for `quietMs`. */
export function endsIn(blocks: readonly Block[], level: number, quietMs: number): readonly number[] {
  const loud = blocks.filter(([, peak]) => peak > level).map(([atMs]) => atMs);
  return loud.filter((atMs, n) => (loud[n + 1] ?? Number.POSITIVE_INFINITY) - atMs > quietMs);
}

/** The first sound above `level` within `withinMs` of `fromMs`; null for none, and where something sounded already. */
export function firstAfter(blocks: readonly Block[], level: number, fromMs: number, withinMs: number): number | null {
  const around = blocks.filter(([atMs]) => atMs > fromMs - 300 && atMs < fromMs + withinMs);
  const [first] = around.find(([, peak]) => peak > level) ?? [];
  return first === undefined || first <= fromMs - 150 ? null : first;
}
