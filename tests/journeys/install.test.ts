/**
 * The app can be installed: the browser itself finds nothing against it, and each file that its manifest names is there as
 * it says (W3C Web Application Manifest; limits of screenshots as Chromium documents them for its install dialogue).
 */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { spokenLanguages } from "../../src/announcements/languages";
import { manifestFor } from "../../src/app/manifest";
import { pageAt } from "../../src/screen/pages/page";
import { openApp, patienceMs } from "./support/artist";
import { openBrowser, serve } from "./support/place";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

const opened = async (language: string): Promise<Page> => {
  const page = await (await browser.newContext({ locale: language })).newPage();
  await openApp(page, place.url);
  await page.waitForFunction(
    (lang) => document.documentElement.lang === lang && document.querySelector('link[rel="manifest"]') !== null,
    language,
    { timeout: patienceMs },
  );
  return page;
};

describe.each(spokenLanguages)("the manifest in %s", (language) => {
  it("is the one that the page names, and the browser finds no fault in it", async () => {
    const page = await opened(language);
    const cdp = await page.context().newCDPSession(page);
    const { data, errors } = await cdp.send("Page.getAppManifest");
    expect(errors).toEqual([]);
    expect(JSON.parse(data ?? "null")).toEqual(manifestFor(language));
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    const { installabilityErrors } = await cdp.send("Page.getInstallabilityErrors");
    // A window that keeps nothing is never offered it; that is the test's window, not the app.
    expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== "in-incognito")).toEqual([]);
    await page.context().close();
  });

  it("names pictures and icons that are there in the sizes it says", async () => {
    const page = await opened(language);
    const { icons, screenshots, shortcuts } = manifestFor(language);
    const named = [...icons, ...screenshots, ...shortcuts.flatMap((one) => one.icons)];
    const isWrong = async (files: { src: string; sizes: string; type: string }[]) => {
      const wrong: string[] = [];
      for (const { src, sizes, type } of files) {
        const answer = await fetch(src);
        if (!answer.ok || answer.headers.get("content-type") !== type) wrong.push(`${src} is not there as ${type}`);
        if (sizes === "any") continue;
        const picture = await createImageBitmap(await answer.blob());
        if (`${picture.width}x${picture.height}` !== sizes) wrong.push(`${src} is not ${sizes}`);
      }
      return wrong;
    };
    const wrong = await page.evaluate(
      isWrong,
      named.map(({ src, sizes, type }) => ({ src, sizes, type })),
    );
    expect(wrong).toEqual([]);
    await page.context().close();
  });
});

describe("the manifest", () => {
  it("shows the app on a wide and on a narrow screen, within 320 to 3840 pixels and no longer than 2.3 times its width", () => {
    const { screenshots } = manifestFor("en");
    expect(new Set(screenshots.map((one) => one.form_factor))).toEqual(new Set(["wide", "narrow"]));
    const sides = screenshots.map(({ sizes }) => sizes.split("x").map(Number));
    expect(sides.flat().every((side) => side >= 320 && side <= 3840)).toBe(true);
    expect(sides.every((both) => Math.max(...both) / Math.min(...both) <= 2.3)).toBe(true);
  });

  it("has shortcuts that lead to pages that exist", () => {
    const leads = manifestFor("en").shortcuts.map(({ url }) => url.slice(url.indexOf("#")));
    expect(leads.map((hash) => `#${pageAt(hash).id}`)).toEqual(leads);
  });
});
