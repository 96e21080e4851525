/**
 * The first visit is short, and nothing is fetched at a moment when the network may be gone: what a session is made of is
 * here before it begins, also where no service worker keeps anything.
 */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { spokenLanguages } from "../../src/announcements/languages";
import { wordsFor } from "../../src/screen/words";
import { builtFiles } from "../support/builtFiles";
import { done, openApp, patienceMs, step } from "./support/artist";
import { openBrowser, serve } from "./support/place";

/** The bar of the first load, without the phrase model. */
const mostBytes = 200 * 1024;

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await place?.close().catch(() => undefined);
});

/** No service worker: nothing comes but from the network. */
async function visit(language: string): Promise<{ context: BrowserContext; page: Page; scripts: string[] }> {
  const context = await browser.newContext({ locale: language, serviceWorkers: "block" });
  const page = await context.newPage();
  const scripts: string[] = [];
  page.on("request", (request) => {
    const { pathname } = new URL(request.url());
    if (pathname.endsWith(".js")) scripts.push(pathname.slice(1));
  });
  return { context, page, scripts };
}

describe.each(spokenLanguages)("a first visit in %s", (language) => {
  it("weighs at most 200 KB of program, compressed", () => {
    const built = builtFiles("dist/");
    expect(built.gzipBytes(built.firstLoad(language))).toBeLessThanOrEqual(mostBytes);
  });

  it("shows its first screen with those programs and no other", async () => {
    const { context, page } = await visit(language);
    const first = new Set(builtFiles("dist/").firstLoad(language));
    await page.route("**/*.js", (route) =>
      first.has(new URL(route.request().url()).pathname.slice(1)) ? route.continue() : route.abort(),
    );
    await openApp(page, place.url);
    const w = wordsFor(language);
    await page.getByRole("button", { name: w.prepare.start }).click();
    // What is missing is asked for in words; a session does not begin without its parts.
    await page.getByText(w.prepare.mend).waitFor({ timeout: patienceMs });
    await page.getByRole("button", { name: w.prepare.trySpeaker }).click();
    await page.getByText(w.pages.partNotFetched).waitFor({ timeout: patienceMs });
    await context.close();
  });

  it("has all of a session a moment later: it is worked with the server gone", async () => {
    const { context, page, scripts } = await visit(language);
    await openApp(page, place.url);
    const before = builtFiles("dist/").beforeSession(language);
    await expect.poll(() => before.filter((file) => !scripts.includes(file)), { timeout: patienceMs }).toEqual([]);
    await page.waitForLoadState("networkidle");
    await context.setOffline(true);
    const w = wordsFor(language).prepare;
    await page.getByRole("textbox", { name: w.client }).fill("C-014");
    await page.getByRole("textbox", { name: w.artist }).fill("Artist A");
    await page.getByRole("textbox", { name: w.station }).fill(`Station ${language}`);
    await page.getByRole("button", { name: w.start }).click();
    await page.getByTestId("session").waitFor({ timeout: patienceMs });
    const first = await step(page);
    await done(page);
    expect(await step(page)).not.toBe(first);
    // The accident flow and the record's own screen are parts of it, too.
    await page.keyboard.press("F9");
    await page.getByRole("heading", { name: wordsFor(language).session.firstAid }).waitFor({ timeout: patienceMs });
    await context.close();
  });
});
