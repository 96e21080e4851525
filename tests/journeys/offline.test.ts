/** Once the device is prepared the app needs no network: it opens, a session runs, it speaks, the phrase model loads. */
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
  await page.getByRole("button", { name: "Prepare this device" }).click();
  await page.getByTestId("device").waitFor({ state: "detached", timeout: 120_000 });
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
});
afterAll(() => browser?.close());

describe("preparing the device", () => {
  it("keeps each file only with the hash that the build gave it", async () => {
    const kept = await page.evaluate(async () => {
      const cache = await caches.open("gloveside-pack");
      const { files } = (await (await fetch("device-pack.json")).json()) as {
        files: { path: string; sha256: string }[];
      };
      const each = files.map(async ({ path, sha256 }) => {
        const found = await cache.match(new URL(path, document.baseURI));
        if (!found) return /^(clips\/es\.|(own-)?voice\/es\/)/.test(path) ? [] : [`${path} is not there`];
        const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await found.arrayBuffer()));
        const hex = [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("");
        return hex === sha256 ? [] : [`${path} differs`];
      });
      return (await Promise.all(each)).flat();
    });
    expect(kept).toEqual([]);
  });
});

describe("with the network cut once the device is prepared", () => {
  beforeAll(async () => {
    await context.setOffline(true);
    // The server is gone, too.
    await place.close();
  });

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
