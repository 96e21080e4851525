/** `npm run pictures`: the pictures of the README, taken from the app as it is served, in a real Chromium. */
import { mkdirSync } from "node:fs";
import type { Page } from "playwright-core";
import { fillIn, openApp, start, step } from "./journeys/support/artist";
import { openBrowser, serve } from "./journeys/support/place";
import { actOnce } from "./journeys/support/walker";

const folder = "public/pictures";
const sleep = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Walks by keys until surfaces are under their clocks. */
async function toWetSurfaces(page: Page): Promise<void> {
  for (let acts = 0; acts < 120; acts++) {
    const clocks = await page.locator('[data-testid^="clock-"]').count();
    if (clocks >= 2) return;
    await actOnce(page, {});
    await sleep(120);
  }
  throw new Error(`no wet surface was reached; the step is ${await step(page)}`);
}

mkdirSync(folder, { recursive: true });
const place = await serve();
const browser = await openBrowser();
const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
await openApp(page, place.url);
await page.screenshot({ path: `${folder}/prepare.png` });
await page.getByRole("radio", { name: /Convention booth/ }).check({ force: true });
await fillIn(page);
await start(page);
await toWetSurfaces(page);
await sleep(9_000);
await page.screenshot({ path: `${folder}/station.png` });
console.log(`${folder}/prepare.png and ${folder}/station.png`);
await browser.close();
await place.close();
