/** Debian's Firefox ESR, driven over WebDriver BiDi: a session by keys, and all of it again with the server gone. */
import type { Browser, Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openFirefox } from "./support/firefox";
import { serve } from "./support/place";

const patienceMs = 60_000;
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  place = await serve();
  browser = await openFirefox(null);
  page = await browser.newPage();
  await page.setViewport({ width: 1280, height: 800 });
});
afterAll(async () => {
  await browser?.close();
  await place?.close().catch(() => undefined);
});

const button = (name: string) => page.locator(`::-p-aria(${name}[role="button"])`).setTimeout(patienceMs);
const fill = (name: string, text: string) =>
  page.locator(`::-p-aria(${name}[role="textbox"])`).setTimeout(patienceMs).fill(text);
const here = (selector: string) => page.waitForSelector(selector, { timeout: patienceMs });
const step = () => page.$eval('[data-testid="now"]', (now) => now.getAttribute("data-step"));
const until = (what: () => boolean) => page.waitForFunction(what, { timeout: patienceMs, polling: 200 });

/** The form behind the page has one too, out of sight. */
const isReady = () =>
  [...document.querySelectorAll('[data-testid="device"]')].some((device) => device.getAttribute("data-at") === "ready");

async function begin(client: string): Promise<void> {
  await fill("Client reference", client);
  await fill("Artist", "Artist A");
  await fill("Station", "Station 1");
  await button("Start the session").click();
  await here('[data-testid="session"]');
}

async function goOn(): Promise<void> {
  const before = await step();
  await page.keyboard.press("PageDown");
  await page.waitForFunction(
    (id) => document.querySelector('[data-testid="now"]')?.getAttribute("data-step") !== id,
    { timeout: patienceMs, polling: 200 },
    before,
  );
}

describe("in Firefox", () => {
  it("a session begins, shows the thing to do in large letters, and goes on by key", async () => {
    await page.goto(place.url);
    await begin("C-1");
    const share = await page.$eval(
      '[data-testid="now"] h1',
      (title) => Number.parseFloat(getComputedStyle(title).fontSize) / innerHeight,
    );
    expect(share).toBeGreaterThanOrEqual(1 / 12);
    await goOn();
    await goOn();
    expect(await step()).not.toBeNull();
  });

  it("the session comes back by itself after a reload, nothing lost", async () => {
    const before = await step();
    await page.reload();
    await here('[data-testid="session"]');
    expect(await step()).toBe(before);
  });

  it("the device is prepared, and the server may go", async () => {
    await page.evaluate(() => sessionStorage.clear());
    await page.goto(`${place.url}#settings`);
    await page.reload();
    await here('[data-testid="device"]');
    // The form behind the page has one too, out of sight.
    await page.$$eval('[data-testid="device"] button', (buttons) =>
      (buttons as HTMLButtonElement[]).find((each) => each.checkVisibility())?.click(),
    );
    await until(isReady);
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await place.close();
    await page.goto(`${place.url}#settings`);
    await page.reload();
    await until(isReady);
  });

  it("without the server a session is taken up, begun and worked in", async () => {
    await page.evaluate(() => {
      location.hash = "prepare";
    });
    await begin("C-2");
    await goOn();
    const said = await page.$eval('[data-testid="says"]', (says) => says.textContent);
    expect(said).not.toBe("");
  });
});
