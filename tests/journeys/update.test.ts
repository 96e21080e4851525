/** A device that is not what was made is not kept; a newer version waits for the end of the session. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { staticServer } from "../../bin/staticServer.mjs";
import { done, fillIn, openApp, patienceMs, start, step } from "./support/artist";
import { openBrowser, serve } from "./support/place";

let browser: Browser;
let context: BrowserContext;
let page: Page;
let url: string;
const site = mkdtempSync(join(tmpdir(), "site-"));
const clips = `${site}/clips/en.phrasebook.mp3`;
const made = () => readFileSync("dist/clips/en.phrasebook.mp3");

beforeAll(async () => {
  await (await serve()).close();
  cpSync("dist", site, { recursive: true });
  const server = staticServer(site);
  await new Promise<void>((ready) => server.listen(0, "localhost", ready));
  url = `http://localhost:${(server.address() as AddressInfo).port}/`;
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  page = await context.newPage();
});
afterAll(async () => {
  await browser?.close();
  rmSync(site, { recursive: true });
});

describe("preparing the device", () => {
  it("keeps nothing of a file that arrived otherwise than it was made, and says so", async () => {
    const spoiled = made();
    spoiled.writeUInt8(spoiled.readUInt8(9_999) ^ 1, 9_999);
    writeFileSync(clips, spoiled);
    await openApp(page, url);
    await page.getByRole("button", { name: "Prepare this device" }).click();
    await page.getByText("A file did not arrive as it was made.").waitFor({ timeout: patienceMs });
    const isKept = await page.evaluate(async () => {
      const cache = await caches.open("gloveside-pack");
      return (await cache.match(new URL("clips/en.phrasebook.mp3", document.baseURI))) !== undefined;
    });
    expect(isKept).toBe(false);
  });

  it("goes on where it stopped once the file is right", async () => {
    writeFileSync(clips, made());
    await page.getByRole("button", { name: "Prepare this device" }).click();
    await page.getByTestId("device").waitFor({ state: "detached", timeout: patienceMs });
  });
});

describe("a newer version", () => {
  it("does not touch a session that runs, and is offered after it", async () => {
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await page.reload();
    await fillIn(page);
    await start(page);
    const life = await page.evaluate(() => performance.timeOrigin);
    writeFileSync(`${site}/sw.js`, `${readFileSync(`${site}/sw.js`, "utf8")}\n// newer\n`);
    const isWaiting = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
      for (let tries = 0; tries < 200 && !registration.waiting; tries++)
        await new Promise((later) => setTimeout(later, 100));
      return registration.waiting !== null;
    });
    expect(isWaiting).toBe(true);
    const before = await step(page);
    await done(page);
    expect(await step(page)).not.toBe(before);
    expect(await page.getByText("A newer version is ready.").count()).toBe(0);
    expect(await page.evaluate(() => performance.timeOrigin)).toBe(life);
  });

  it("is loaded in another window when it is asked for there; the session here goes on", async () => {
    const other = await context.newPage();
    await openApp(other, url);
    await other.getByText("A newer version is ready.").waitFor({ timeout: patienceMs });
    const lives = await Promise.all([page, other].map((each) => each.evaluate(() => performance.timeOrigin)));
    await other.getByRole("button", { name: "Load it now" }).click();
    await other.waitForFunction((before) => performance.timeOrigin !== before, lives[1], { timeout: patienceMs });
    await other.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting === null);
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === "activated");
    const before = await step(page);
    await done(page);
    expect(await step(page)).not.toBe(before);
    expect(await page.evaluate(() => performance.timeOrigin)).toBe(lives[0]);
    await page.close();
    page = other;
  });

  it("still has the session to be taken up", async () => {
    await page.reload();
    await page.getByRole("button", { name: "Take it up again" }).waitFor({ timeout: patienceMs });
  });
});
