/** The beginning of a session by touch and keys, a reload in its middle, and what a page may never do meanwhile. */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { atStep, done, fillIn, kindsOf, onDisk, openApp, patienceMs, start } from "./support/artist";
import { openBrowser, serve, type Watched, watch } from "./support/place";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let watched: Watched;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  watched = await watch(context, place.url);
  page = await context.newPage();
  await openApp(page, place.url);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

describe("a session begun by touch and keys", () => {
  it("says what is missing before it starts, and starts nothing", async () => {
    await page.getByRole("button", { name: "Start the session" }).click();
    await page.getByText("Client reference is missing").waitFor({ timeout: patienceMs });
    expect(await onDisk(page)).toEqual([]);
  });

  it("starts with its first facts on disk", async () => {
    await fillIn(page);
    await start(page);
    await atStep(page, "jewelleryOff");
    const [session] = await onDisk(page);
    expect(session && kindsOf(session).slice(0, 3)).toEqual(["SessionBegan", "PhaseEntered", "StepEntered"]);
  });

  it("shows the thing to do in letters of a twelfth of the screen's height", async () => {
    const size = await page
      .getByRole("heading", { level: 1 })
      .evaluate((h) => Number.parseFloat(getComputedStyle(h).fontSize));
    expect(size).toBeGreaterThanOrEqual(800 / 12);
  });

  it("has touch targets of 96 pixels", async () => {
    const boxes = await page.getByRole("navigation").getByRole("button").all();
    const sides = await Promise.all(boxes.map(async (box) => (await box.boundingBox()) ?? { width: 0, height: 0 }));
    expect(sides.length).toBe(10);
    expect(Math.min(...sides.flatMap(({ width, height }) => [width, height]))).toBeGreaterThanOrEqual(96);
  });

  it("goes on by pedal, by touch and by the space bar", async () => {
    await done(page);
    await page.getByRole("button", { name: /^Done/ }).click();
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await atStep(page, "firstGloves");
    await page.keyboard.press("Space");
    await atStep(page, "cleanSurfaces");
  });

  it("refuses aloud and in words to leave out what guards health", async () => {
    await done(page);
    await done(page);
    await page.keyboard.press("k");
    await page.getByText("This step guards health and stays in.").first().waitFor({ timeout: patienceMs });
  });

  it("starts a clock for each surface that was sprayed", async () => {
    expect(await page.getByTestId("clock-lamp").getAttribute("data-face")).toBe("counting");
  });

  it("comes back by itself after a reload, with the clocks doubtful and nothing lost", async () => {
    const before = (await onDisk(page))[0]?.facts ?? [];
    await page.reload();
    await page.locator('[data-testid="clock-lamp"][data-face="doubtful"]').waitFor({ timeout: patienceMs });
    const after = (await onDisk(page))[0]?.facts ?? [];
    expect(after.slice(0, before.length)).toEqual(before);
    expect(after[before.length]).toMatchObject({ type: "v1.GapSeen", why: "reload", witnessedMs: 0 });
  });

  it("believes a yes for one surface and counts on, the others wait", async () => {
    await page.getByRole("button", { name: "lamp: Yes" }).click();
    await page.locator('[data-testid="clock-lamp"][data-face="counting"]').waitFor({ timeout: patienceMs });
    expect(await page.getByTestId("clock-chair").getAttribute("data-face")).toBe("doubtful");
  });

  it("reaches the accident by one key, and first aid stands there", async () => {
    await page.keyboard.press("F9");
    await page.getByRole("heading", { name: "First aid first" }).waitFor({ timeout: patienceMs });
    expect(kindsOf((await onDisk(page))[0] ?? expect.fail("the session is on disk"))).toContain("ExposureReported");
  });

  it("asked nobody but its own origin, and broke no rule of its policy", () => {
    expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
  });
});
