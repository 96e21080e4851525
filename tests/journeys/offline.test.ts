/** After one visit the app needs no network: it opens, a session runs, the companion speaks, the phrase model loads. */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { done, fillIn, openApp, patienceMs, start, step } from "./support/artist";
import { openBrowser, serve } from "./support/place";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 768, height: 1024 } });
  page = await context.newPage();
  await openApp(page, place.url);
  await page.getByText("Works offline from now on.").waitFor({ timeout: 120_000 });
  // The network is cut and the server is gone.
  await context.setOffline(true);
  await place.close();
});
afterAll(() => browser?.close());

describe("with the network cut after the first visit", () => {
  it("opens again", async () => {
    await page.reload();
    await page.getByRole("heading", { name: "Prepare" }).waitFor({ timeout: patienceMs });
  });

  it("still listens: the phrase model is there", async () => {
    await page.getByRole("button", { name: "Try the microphone" }).click();
    await page.getByText("Listening").waitFor({ timeout: patienceMs });
    await page.getByRole("button", { name: "Stop trying" }).click();
  });

  it("still speaks: the clips are there", async () => {
    await page.getByRole("button", { name: "Play a sentence" }).click();
    await page.getByText("This is how I sound.").waitFor({ timeout: patienceMs });
    await page.getByText("You should hear it over the machine.").waitFor({ timeout: patienceMs });
  });

  it("runs a session", async () => {
    await fillIn(page);
    await start(page);
    const first = await step(page);
    await done(page);
    expect(await step(page)).not.toBe(first);
  });
});
