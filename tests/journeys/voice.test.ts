/** What the companion says is sound, not silence: captured from the app's own audio output, announcement by announcement. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { done, fillIn, openApp, patienceMs, start } from "./support/artist";
import { listenIn, sounded } from "./support/listenIn";
import { openBrowser, serve } from "./support/place";

/** Speech in our clips lies above this; digital silence is 0. Root mean square. */
const audible = 0.005;

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser({ kind: "denied" });
  page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await openApp(page, place.url);
  await fillIn(page);
  await start(page);
  await listenIn(page);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

/** Waits for the words, and for the app's own output to sound meanwhile: a busy machine begins a clip late. */
async function says(text: string): Promise<void> {
  await page.getByTestId("says").getByText(text).waitFor({ timeout: patienceMs });
  await page.waitForFunction(
    ([words, level]) =>
      (globalThis as unknown as { soundTrack: { text: string; rms: number }[] }).soundTrack.some(
        (sample) => sample.text.includes(words) && sample.rms > level,
      ),
    [text, audible] as const,
    { timeout: patienceMs },
  );
}

describe("what the companion says", () => {
  it("sounds for each of the first steps", async () => {
    await says("Take off rings");
    await done(page);
    await says("Wash your hands for forty to sixty seconds");
    await done(page);
    await says("Put on fresh gloves");
    await page.getByTestId("says").getByText("Silent").waitFor({ timeout: patienceMs });
    const spoken = await sounded(page, "Silent");
    const texts = spoken.map(({ text }) => text).join(" | ");
    expect(texts).toContain("Take off rings, watch and bracelets.");
    expect(texts).toContain("Wash your hands for forty to sixty seconds, and dry them.");
    expect(spoken.filter(({ loudest }) => loudest < audible)).toEqual([]);
  });

  it("sounds for a refusal", async () => {
    await page.keyboard.press("q");
    await says("Not at this point.");
    await page.getByTestId("says").getByText("Silent").waitFor({ timeout: patienceMs });
    const refusal = (await sounded(page, "Silent")).find(({ text }) => text.startsWith("Not at this point."));
    expect(refusal?.loudest).toBeGreaterThan(audible);
  });

  it("is quiet when it has nothing to say", async () => {
    await page.waitForTimeout(1_000);
    const quiet = await page.evaluate(() =>
      (globalThis as unknown as { soundTrack: { rms: number }[] }).soundTrack.slice(-15).map(({ rms }) => rms),
    );
    expect(Math.max(...quiet)).toBeLessThan(audible);
  });
});
