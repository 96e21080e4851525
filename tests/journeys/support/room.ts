/**
 * A room of the test's own instead of the browser's microphone: what the test says is heard when it says it, and what the
 * page plays comes back out of the loudspeaker if that is wanted.
 */
import type { BrowserContext, Page } from "playwright-core";

interface Room {
  /** 16-bit samples at 16 kHz, base64. Settles when it has sounded. */
  say(samples: string): Promise<void>;
  /** What the page plays is in the room from now on, so much louder or softer, a tenth of a second late. */
  loudspeaker(gain: number): void;
  /** Root mean square of what the page played while it played something, since it was last asked. */
  playedRms(): number;
}

/** Before the page opens. */
export async function furnish(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    // The empty page before the first has no devices.
    if (!("mediaDevices" in navigator)) return;
    let air: { context: AudioContext; hall: MediaStreamAudioDestinationNode } | null = null;
    const openAir = () => {
      if (air) return air;
      const here = new AudioContext();
      const hall = here.createMediaStreamDestination();
      const hiss = here.createBufferSource();
      hiss.buffer = here.createBuffer(1, here.sampleRate, here.sampleRate);
      const samples = hiss.buffer.getChannelData(0);
      for (let n = 0; n < samples.length; n++) samples[n] = 0.0008 * (Math.random() - 0.5);
      hiss.loop = true;
      hiss.connect(hall);
      hiss.start();
      air = { context: here, hall };
      return air;
    };
    const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
    navigator.mediaDevices.getUserMedia = async (wanted) =>
      wanted?.video
        ? ask(wanted)
        : new MediaStream(
            openAir()
              .hall.stream.getAudioTracks()
              .map((track) => track.clone()),
          );
    let levels: number[] = [];
    const room: Room = {
      say(samples) {
        const { context: here, hall } = openAir();
        const bytes = Uint8Array.from(atob(samples), (letter) => letter.charCodeAt(0));
        const numbers = new Int16Array(bytes.buffer);
        const buffer = here.createBuffer(1, numbers.length, 16_000);
        buffer.copyToChannel(
          Float32Array.from(numbers, (x) => x / 32_768),
          0,
        );
        const voice = here.createBufferSource();
        voice.buffer = buffer;
        voice.connect(hall);
        voice.start();
        return new Promise((said) => {
          voice.onended = () => said();
        });
      },
      loudspeaker(gain) {
        const { context: here, hall } = openAir();
        const { Howler } = globalThis as unknown as { Howler: { ctx: AudioContext; masterGain: GainNode } };
        const out = Howler.ctx.createMediaStreamDestination();
        Howler.masterGain.connect(out);
        const late = here.createDelay(1);
        late.delayTime.value = 0.1;
        const loudness = here.createGain();
        loudness.gain.value = gain;
        here.createMediaStreamSource(out.stream).connect(late).connect(loudness).connect(hall);
        const meter = here.createAnalyser();
        meter.fftSize = 2048;
        loudness.connect(meter);
        const samples = new Float32Array(meter.fftSize);
        setInterval(() => {
          meter.getFloatTimeDomainData(samples);
          levels.push(Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length));
        }, 40);
      },
      playedRms() {
        const loud = levels.filter((level) => level > 0.005);
        levels = [];
        return Math.sqrt(loud.reduce((sum, x) => sum + x * x, 0) / Math.max(1, loud.length));
      },
    };
    Object.assign(globalThis, { room });
  });
}

/** @param sound 16 kHz, −1..1. */
export function sayInRoom(page: Page, sound: Float32Array): Promise<void> {
  const numbers = Int16Array.from(sound, (x) => Math.round(32_767 * Math.max(-1, Math.min(1, x))));
  const text = Buffer.from(numbers.buffer).toString("base64");
  return page.evaluate((samples) => (globalThis as unknown as { room: Room }).room.say(samples), text);
}

/** Once the page has its voice. */
export async function playInRoom(page: Page, gain: number): Promise<void> {
  await page.waitForFunction(() => (globalThis as unknown as { Howler?: { ctx: unknown } }).Howler?.ctx != null);
  await page.evaluate((louder) => (globalThis as unknown as { room: Room }).room.loudspeaker(louder), gain);
}

export const playedRms = (page: Page): Promise<number> =>
  page.evaluate(() => (globalThis as unknown as { room: Room }).room.playedRms());
