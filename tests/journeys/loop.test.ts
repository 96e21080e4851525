/**
 * Not hearing itself: everything the companion says comes back into its microphone as loud as the artist's own voice, a
 * tenth of a second late. It does nothing of what it hears itself say, and the artist can interrupt it.
 */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { phrase, phraseRms, rateHz } from "../../audio/make/rehearsal/artistVoice";
import { type CommandId, commands } from "../../src/intent/phrases";
import { fillIn, kindsHeard, openApp, patienceMs, start, step } from "./support/artist";
import { openBrowser, serve } from "./support/place";
import { furnish, playedRms, playInRoom, sayInRoom } from "./support/room";

let folder = "";
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;
/** How loud the companion comes back into the microphone. */
let echoRms = 0;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "loop-"));
  place = await serve();
  browser = await openBrowser();
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await furnish(context);
  page = await context.newPage();
  await openApp(page, place.url);
  await fillIn(page);
  await playInRoom(page, 0.6);
  await start(page);
  await page.locator('[data-testid="ear"][data-condition="on"]').waitFor({ timeout: patienceMs });
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
  await rm(folder, { recursive: true });
});

const isSpeaking = () => page.locator("[data-speaking]").count();
const silence = () => expect.poll(isSpeaking, { timeout: patienceMs }).toBe(0);
/** Asks for something by key, and waits until the answer begins to sound, however short it is. */
async function ask(key: string): Promise<void> {
  const begins = page.evaluate(
    () =>
      new Promise<void>((begun) => {
        const watching = new MutationObserver(() => {
          if (document.querySelector("[data-speaking]") === null) return;
          watching.disconnect();
          begun();
        });
        watching.observe(document.body, { subtree: true, attributes: true, childList: true });
      }),
  );
  await page.keyboard.press(key);
  await begins;
}
/** As loud as the companion is in the room: 0 dB. */
const asLoud = (command: CommandId): Float32Array =>
  phrase("station", command, folder).map((x) => (x * echoRms) / phraseRms);

describe("with its own voice in the microphone at 0 dB", () => {
  it("does nothing of what it hears itself say", async () => {
    await silence();
    const at = await step(page);
    // Answers full of its own phrases, and the step again and again.
    for (const key of ["o", "w", "m", "o", "r", "l"]) {
      await ask(key);
      await silence();
    }
    echoRms = await playedRms(page);
    expect(echoRms).toBeGreaterThan(0.02);
    expect(await step(page)).toBe(at);
    expect(await kindsHeard(page)).toEqual([]);
  });

  it("can be interrupted: it does what is said while it speaks", async () => {
    let said = 0;
    for (let steps = 0; steps < 4; steps++) {
      const before = await step(page);
      while ((await step(page)) === before) {
        said += 1;
        expect(said).toBeLessThan(20);
        await silence();
        await ask("r");
        await sayInRoom(page, asLoud("done"));
        await silence();
      }
    }
    console.log(`barge in at 0 dB: 4 of ${said} heard, echo ${echoRms.toFixed(3)} RMS`);
    expect(new Set(await kindsHeard(page))).toEqual(new Set(["StepDone", "StepEntered"]));
  });

  it("does nothing where the artist says no more than its name while it reads out what may be said", async () => {
    const before = await kindsHeard(page);
    const name = asLoud("done").slice(0, 0.55 * rateHz);
    for (const laterMs of [300, 1100, 1900, 2700]) {
      await silence();
      await ask("o");
      await page.waitForTimeout(laterMs);
      await sayInRoom(page, name);
      await silence();
    }
    expect(await kindsHeard(page)).toEqual(before);
  });

  it("asks about a choice that is picked in the moment it is read out", async () => {
    for (let tries = 0; ; tries++) {
      expect(tries).toBeLessThan(8);
      await silence();
      await ask("o");
      await sayInRoom(page, asLoud("done"));
      const question = page.getByText(`Did you say: ${commands.done}?`).first();
      const isAsked = question.waitFor({ timeout: 14_000 }).then(
        () => true,
        () => false,
      );
      if (await isAsked) return;
    }
  });

  it("is quiet when it is told to be, in the middle of a sentence", async () => {
    await silence();
    for (let tries = 0; ; tries++) {
      expect(tries).toBeLessThan(8);
      await ask("o");
      await sayInRoom(page, asLoud("hush"));
      const heard = page.getByTestId("heard").getByText("be quiet now");
      await silence();
      if (await heard.isVisible()) return;
    }
  });
});
