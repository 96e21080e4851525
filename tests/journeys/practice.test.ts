/** The practice button: a recorded artist takes the place of the microphone, is understood, and nothing of it is kept. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { onDisk, openApp, patienceMs } from "./support/artist";
import { openBrowser, serve } from "./support/place";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser({ kind: "missing" });
  page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await openApp(page, place.url);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

describe("practice, on a machine without a microphone", () => {
  it("begins, and says on its face that it is practice", async () => {
    await page.getByRole("button", { name: "Practice with a recorded artist" }).click();
    await page.getByTestId("session").waitFor({ timeout: patienceMs });
    await page.getByText("Practice", { exact: true }).waitFor({ timeout: patienceMs });
  });

  it("goes on by what the recorded artist says, untouched", async () => {
    await page.getByTestId("heard").getByText("station completed").waitFor({ timeout: 120_000 });
    await page.locator('[data-testid="hands"]', { hasText: "Hands washed" }).waitFor({ timeout: 120_000 });
  });

  it("keeps nothing of it on the device", async () => {
    expect(await onDisk(page)).toEqual([]);
  });
});
