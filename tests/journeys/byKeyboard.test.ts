/** Someone without a mouse: settings, a session from its form to its seal, and its record found again. Nothing is clicked. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { Protocol } from "../../src/session/protocol";
import { addProtocol, patienceMs } from "./support/artist";
import { press, reach, select, type } from "./support/keyboard";
import { openBrowser, serve } from "./support/place";
import { provedSmall } from "./support/provedSmall";

const quickProtocol = Protocol.parse({
  ...provedSmall,
  products: provedSmall.products.map((slot) => ({
    ...slot,
    label: { ...slot.label, contactSec: 3, reapplyWithinSec: null },
  })),
});

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(patienceMs);
  await page.goto(place.url);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

const button = (name: string) => page.getByRole("button", { name, exact: true });
const to = async (name: string) => {
  await press(page, page.getByRole("link", { name, exact: true }));
  await page.getByRole("heading", { level: 1, name }).waitFor();
};
const heading = () => page.getByTestId("now").getAttribute("data-step");

it("chooses another look in the settings, and is shown where the focus is", async () => {
  await to("Settings");
  await select(page, page.getByRole("radio", { name: "Dark" }));
  await expect.poll(() => page.evaluate(() => document.documentElement.dataset.theme)).toBe("dark");
  await reach(page, page.getByRole("link", { name: "Prepare", exact: true }));
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement ?? document.body).outlineWidth);
  expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(3);
});

it("fills in the form, begins, goes on by space bar, asks for all phrases and comes back", async () => {
  await to("Prepare");
  // A file is given as a person gives it: by the system's own dialogue, which is not ours to drive.
  await addProtocol(page, JSON.stringify(quickProtocol));
  await page.getByRole("radio", { name: quickProtocol.name.en }).waitFor({ state: "attached" });
  await select(page, page.getByRole("radio", { name: quickProtocol.name.en }));
  await type(page, page.getByRole("textbox", { name: "Client reference" }), "C-014");
  await type(page, page.getByRole("textbox", { name: "Artist" }), "Artist A");
  await type(page, page.getByRole("textbox", { name: "Station" }), "Station 1");
  await press(page, button("Start the session"));
  await page.getByTestId("session").waitFor();
  const first = await heading();
  await page.keyboard.press("Space");
  await expect.poll(heading).not.toBe(first);
  await press(page, page.getByRole("button", { name: /^All phrases/ }));
  await page.getByRole("dialog").waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("dialog").waitFor({ state: "detached" });
});

it("stops early, says why a step is left out, and seals", async () => {
  await press(page, page.getByRole("button", { name: /^Something happened/ }));
  await press(page, page.getByRole("dialog").getByRole("button", { name: /^Stop early/ }));
  await page.getByRole("dialog").waitFor({ state: "detached" });
  const kind = () => page.getByTestId("now").getAttribute("data-kind");
  const asked = () =>
    page.evaluate(() => document.querySelector('[data-testid="question"]')?.getAttribute("aria-label"));
  await expect
    .poll(
      async () => {
        const question = await asked();
        if (question === "Close and seal?") return "close";
        const waits = await page.locator('[data-testid^="clock-"][data-face="counting"]').count();
        if (!question && waits > 0) return "waiting";
        if (question === "Stayed wet?")
          await press(
            page,
            page
              .getByTestId("question")
              .getByRole("button", { name: /: Yes$/ })
              .first(),
          );
        else if (question?.includes("should be in the container")) await page.keyboard.press("c");
        else await page.keyboard.press((await kind()) === "mayClose" ? "q" : "PageDown");
        return "on the way";
      },
      { timeout: 2 * patienceMs },
    )
    .toBe("close");
  await page.keyboard.press("c");
  await page.getByTestId("sealing").getByText("Sealed").waitFor();
});

it("finds the record", async () => {
  await press(page, button("Next client"));
  await to("Records");
  await type(page, page.getByRole("textbox", { name: "Client reference" }), "C-014");
  await expect.poll(() => page.getByTestId("sessions").getByRole("listitem").count()).toBe(1);
});
