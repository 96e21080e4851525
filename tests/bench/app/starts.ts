/**
 * How soon the prepare screen can be used, on the profile of a slow phone: the first visit over a slow mobile network, a
 * repeat visit over the same, and with no network at all.
 */
import type { Browser, BrowserContext, CDPSession, Page } from "playwright-core";
import { patienceMs } from "../../journeys/support/artist";
import { builtFiles } from "../../support/builtFiles";
import { bearNames } from "./begin";
import { ms, print, quantile } from "./table";

/** Of the processor. */
export const slowdown = 4;
/**
 * "Slow 4G" as Chromium's own audit tool applies it while a page loads (its constants for a mobile network: 150 ms and
 * 1.6 Mbit/s, the first times 3.75, the second times 0.9). From memory.
 */
const slow4g = { offline: false, latency: 562.5, downloadThroughput: (1_474_560 / 8) | 0, uploadThroughput: 84_375 };

interface Start {
  /** When something was drawn first. */
  readonly drawnMs: number;
  /** When the form could be filled in and sent off, and stood on the screen. */
  readonly usableMs: number;
  /** When the last program of a session had come. */
  readonly sessionMs: number;
}

/** Notes when the button that starts a session can be pressed and has been drawn. */
const watchForUse = () => {
  const look = () => {
    const button = document.querySelector('form button[type="submit"]');
    if (!button || button.hasAttribute("disabled")) return requestAnimationFrame(look);
    requestAnimationFrame(() => performance.mark("usable"));
  };
  requestAnimationFrame(look);
};

async function slow(page: Page): Promise<CDPSession> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
  return cdp;
}

async function startOf(page: Page, open: () => Promise<unknown>): Promise<Start> {
  await open();
  const files = builtFiles("dist/").beforeSession("en");
  const isHere = (wanted: readonly string[]) => {
    const here = new Set(performance.getEntriesByType("resource").map(({ name }) => new URL(name).pathname.slice(1)));
    return performance.getEntriesByName("usable").length > 0 && wanted.every((file) => here.has(file));
  };
  await page.waitForFunction(isHere, files, { timeout: 2 * patienceMs });
  return page.evaluate((wanted) => {
    const ends = performance
      .getEntriesByType("resource")
      .filter(({ name }) => wanted.includes(new URL(name).pathname.slice(1)))
      .map((entry) => (entry as PerformanceResourceTiming).responseEnd);
    return {
      drawnMs: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? Number.NaN,
      usableMs: performance.getEntriesByName("usable")[0]?.startTime ?? Number.NaN,
      sessionMs: Math.max(...ends),
    };
  }, files);
}

async function visits(browser: Browser, url: string): Promise<readonly [Start, Start, Start]> {
  const context: BrowserContext = await browser.newContext({ viewport: { width: 360, height: 640 } });
  await bearNames(context);
  await context.addInitScript(watchForUse);
  const page = await context.newPage();
  const cdp = await slow(page);
  await cdp.send("Network.enable");
  await cdp.send("Network.emulateNetworkConditions", slow4g);
  const first = await startOf(page, () => page.goto(url));
  // The rest of the pages arrive meanwhile; nobody waits for them.
  await cdp.send("Network.emulateNetworkConditions", { ...slow4g, latency: 0, downloadThroughput: -1 });
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await page.close();
  const repeat = await again(context, url, slow4g);
  const offline = await again(context, url, { ...slow4g, offline: true });
  await context.close();
  return [first, repeat, offline];
}

async function again(context: BrowserContext, url: string, network: typeof slow4g): Promise<Start> {
  const page = await context.newPage();
  const cdp = await slow(page);
  await cdp.send("Network.enable");
  await cdp.send("Network.emulateNetworkConditions", network);
  const start = await startOf(page, () => page.goto(url));
  await page.close();
  return start;
}

export async function measureStarts(browser: Browser, url: string, runs: number): Promise<void> {
  const all: (readonly [Start, Start, Start])[] = [];
  for (let run = 0; run < runs; run++) all.push(await visits(browser, url));
  const names = ["first visit, slow 4G", "repeat visit, slow 4G  (bar 2500 ms)", "no network"];
  print(
    `starts at a ${slowdown} times slower processor, ${runs} runs`,
    ["drawn", "usable", "usable, worst", "session ready"],
    names.map((what, kind) => {
      const of = (part: keyof Start) => all.map((starts) => (starts[kind] as Start)[part]);
      return {
        what,
        figures: [
          ms(quantile(of("drawnMs"), 0.5)),
          ms(quantile(of("usableMs"), 0.5)),
          ms(Math.max(...of("usableMs"))),
          ms(quantile(of("sessionMs"), 0.5)),
        ],
      };
    }),
  );
}
