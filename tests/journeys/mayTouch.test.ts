/**
 * "May I touch something?" by hand: asked on the screen, answered aloud with the reason, a no kept on the disk. And a thing
 * taken out of use on a phone, in sight from then on, and taken back.
 */
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

describe("an artist with a phone who finds the lamp broken", () => {
  it.each(["a key", "a touch"])(
    "takes it out of use by %s, sees that it is, and takes it back as soiled",
    async (by) => {
      browser = await openBrowser({ kind: "beeps" });
      const page = await (await browser.newContext({ viewport: { width: 360, height: 640 } })).newPage();
      page.setDefaultTimeout(patienceMs);
      await openApp(page, place.url);
      await fillIn(page);
      await start(page);
      await done(page);
      // So narrow a deck has no "Something happened": its commands stand among all phrases.
      const allPhrases = page.getByRole("button", { name: "All phrases" });
      if (by === "a key") await page.keyboard.press("z");
      else {
        await allPhrases.click();
        await page.getByTestId("takeOutOfUse").click();
      }
      await page.getByTestId("question").getByRole("button", { name: "lamp", exact: true }).click();
      await page.getByTestId("outOfUse").getByText("Out of use: lamp").waitFor();
      await page.getByTestId("says").getByText("Lamp: out of use. Leave it alone.").waitFor();
      await allPhrases.click();
      await page.getByRole("button", { name: "Back in use, as soiled: lamp" }).click();
      await page.getByTestId("outOfUse").waitFor({ state: "detached" });
      const [session] = await onDisk(page);
      const told = session?.facts.filter((f) => f.type === "v1.ItemOutOfUse" || f.type === "v1.ItemBackInUse");
      expect(told).toMatchObject([
        { type: "v1.ItemOutOfUse", item: "lamp" },
        { type: "v1.ItemBackInUse", item: "lamp" },
      ]);
    },
  );
});
