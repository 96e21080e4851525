/** "May I touch something?" by hand: asked on the screen, answered aloud with the reason, a no kept on the disk. */
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { done, fillIn, onDisk, openApp, patienceMs, start, step } from "./support/artist";
import { openBrowser, serve } from "./support/place";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;

beforeAll(async () => {
  place = await serve();
});
afterEach(() => browser?.close());
afterAll(() => place?.close());

async function ask(page: Page, item: string): Promise<void> {
  await page.getByRole("button", { name: "All phrases" }).click();
  await page.getByRole("button", { name: "May I touch something?" }).click();
  await page.getByTestId("question").getByRole("button", { name: item, exact: true }).click();
}

describe("an artist who is not sure", () => {
  it("asks, is told no with the reason, washes, asks again and is told yes", async () => {
    browser = await openBrowser({ kind: "beeps" });
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
    await openApp(page, place.url);
    await fillIn(page);
    await start(page);
    const first = await step(page);
    await ask(page, "lamp");
    await page.getByTestId("says").getByText("No. Lamp: hands are not washed.").waitFor({ timeout: patienceMs });
    expect(await step(page)).toBe(first);
    await done(page);
    await done(page);
    await ask(page, "lamp");
    await page
      .getByTestId("says")
      .getByText("Yes. Lamp: clean, and so are your hands.")
      .waitFor({ timeout: patienceMs });
    const [session] = await onDisk(page);
    expect(session?.facts.filter((f) => f.type === "v1.Refused")).toMatchObject([
      { request: "may.touch", reason: "handsNotWashed", item: "lamp" },
    ]);
  });
});
