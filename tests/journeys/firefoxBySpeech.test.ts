/**
 * A session in Firefox by speech alone: espeak-ng, in a voice that no training has seen, speaks into the microphone of a
 * sound device of its own, and what the companion says is heard at its loudspeaker.
 */
import { join } from "node:path";
import type { Browser, Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { tempFolder } from "../support/tempFolder";
import { phrasesOverMachine, writeSound } from "./support/fakeSound";
import { openFirefox } from "./support/firefox";
import { serve } from "./support/place";
import { missingForSound, openSoundDevice, type SoundDevice } from "./support/soundDevice";

const patienceMs = 60_000;
/** Speech in our clips lies above this; digital silence is 0. Root mean square. */
const audible = 0.005;

const folder = tempFolder("firefox");
let place: Awaited<ReturnType<typeof serve>>;
let device: SoundDevice;
let browser: Browser;
let page: Page;

const step = () => page.$eval('[data-testid="now"]', (now) => now.getAttribute("data-step"));
const ear = () => page.$eval('[data-testid="ear"]', (each) => each.getAttribute("data-condition"));

/** Says it until it is understood: what is said into an announcement may be missed. */
async function goOnBySpeech(): Promise<void> {
  const before = await step();
  await expect
    .poll(
      async () => {
        await device.say(join(folder, "done.wav"));
        return step();
      },
      { timeout: patienceMs, interval: 1_500 },
    )
    .not.toBe(before);
}

describe.skipIf(missingForSound !== null)("in Firefox, by speech", () => {
  beforeAll(async () => {
    await writeSound(
      join(folder, "done.wav"),
      phrasesOverMachine([["station", "done"]], 3, 25, join(folder, "phrases")),
    );
    place = await serve();
    device = await openSoundDevice();
    browser = await openFirefox(device);
    page = await browser.newPage();
    await page.setViewport({ width: 1280, height: 800 });
    await page.goto(place.url);
    const field = (name: string) => page.locator(`::-p-aria(${name}[role="textbox"])`).setTimeout(patienceMs);
    await field("Client reference").fill("C-4");
    await field("Artist").fill("Artist A");
    await field("Station").fill("Station 1");
  });
  afterAll(async () => {
    await browser?.close();
    await device?.close();
    await place?.close();
  });

  it("the first step is heard at the loudspeaker", async () => {
    const sound = await device.heardDuring(async () => {
      await page.locator('::-p-aria(Start the session[role="button"])').setTimeout(patienceMs).click();
      await page.waitForSelector('[data-testid="session"]', { timeout: patienceMs });
      await expect.poll(ear, { timeout: patienceMs }).toBe("on");
      await expect
        .poll(() => page.$eval('[data-testid="says"]', (says) => says.textContent), { timeout: patienceMs })
        .toContain("Silent");
    });
    expect(loudestSecond(sound)).toBeGreaterThan(audible);
  });

  it("the session goes on from step to step by what is said into the microphone", async () => {
    const first = await step();
    await goOnBySpeech();
    const second = await step();
    await goOnBySpeech();
    expect(new Set([first, second, await step()]).size).toBe(3);
  });

  it("a microphone that is pulled out is noticed, and hears again by itself when it is put in", async () => {
    await device.unplug();
    await expect.poll(ear, { timeout: patienceMs }).not.toBe("on");
    await device.plugIn();
    await expect.poll(ear, { timeout: patienceMs }).toBe("on");
    await goOnBySpeech();
  });
});

/** Root mean square of the loudest second. */
function loudestSecond(sound: Float32Array): number {
  const seconds = Array.from({ length: Math.ceil(sound.length / 16_000) }, (_, n) => {
    const part = sound.subarray(n * 16_000, (n + 1) * 16_000);
    return Math.sqrt(part.reduce((sum, x) => sum + x * x, 0) / part.length);
  });
  return Math.max(0, ...seconds);
}
