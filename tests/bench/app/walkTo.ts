/** Walks a session by keys and touch, whatever it asks, until something is so. */
import type { Page } from "playwright-core";
import { actOnce } from "../../journeys/support/walker";
import { wipes } from "./begin";

const pause = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

/** @param mostSec after which it gives up. */
export async function walkTo(page: Page, isThere: (page: Page) => Promise<boolean>, mostSec = 300): Promise<void> {
  const endMs = Date.now() + mostSec * 1000;
  while (!(await isThere(page))) {
    if (Date.now() > endMs) throw new Error("the session never came to it");
    const did = await actOnce(page, wipes);
    await pause(did === "waited" ? 300 : 60);
  }
}

export const countingClocks = (page: Page): Promise<number> =>
  page.locator('[data-testid^="clock-"]:is([data-face="counting"], [data-face="reapply"])').count();

export const isAtWork = (page: Page): Promise<boolean> =>
  page
    .locator('[data-testid="now"][data-kind="atWork"]')
    .count()
    .then((count) => count > 0);
