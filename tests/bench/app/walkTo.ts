/** Walks a session by keys and touch, whatever it asks, until something is so. */
import type { Page } from "playwright-core";
import { wordsFor } from "../../../src/screen/words";
import { wipes } from "./begin";

const pause = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

/** @param finishes whether work on the client is ended when it is come to. */
export async function act(page: Page, finishes: boolean): Promise<void> {
  const { wetness } = wordsFor("en").session.asks;
  // Looked at and answered in one breath: at sixty times its speed a question is gone before a pointer has come to it.
  const key = await page.evaluate(
    ([stayedWet, lastOf, isOver]) => {
      const now = document.querySelector<HTMLElement>('[data-testid="now"]');
      const question = document.querySelector('[data-testid="question"]');
      const faceOf = (surface: string) =>
        document.querySelector<HTMLElement>(`[data-testid="clock-${surface}"]`)?.dataset.face;
      if (question?.getAttribute("aria-label") === stayedWet) question.querySelector("button")?.click();
      else if (question) return "c";
      else if (document.querySelector('[data-testid^="clock-"][data-face="dry"]')) return "s";
      else if (now?.dataset.kind === "atWork") return isOver ? "t" : null;
      else if (now?.dataset.kind === "steps") {
        const surface = lastOf[now.dataset.step ?? ""];
        return surface !== undefined && faceOf(surface) !== "ready" ? null : "PageDown";
      }
      return null;
    },
    [wetness, wipes as Readonly<Record<string, string>>, finishes] as const,
  );
  if (key !== null) await page.keyboard.press(key);
}

/** @param mostSec after which it gives up. */
export async function walkTo(page: Page, isThere: (page: Page) => Promise<boolean>, mostSec: number): Promise<void> {
  const endMs = Date.now() + mostSec * 1000;
  while (!(await isThere(page))) {
    if (Date.now() > endMs) throw new Error("the session never came to it");
    await act(page, true);
    await pause(80);
  }
}

export const countingClocks = (page: Page): Promise<number> =>
  page.locator('[data-testid^="clock-"]:is([data-face="counting"], [data-face="reapply"])').count();

export const isAtWork = (page: Page): Promise<boolean> =>
  page
    .locator('[data-testid="now"][data-kind="atWork"]')
    .count()
    .then((count) => count > 0);
