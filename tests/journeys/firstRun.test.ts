/** From opening to practice: one's own voice as a picture, the spoken tour hands-free and by keys, in both languages. */
import { fileURLToPath } from "node:url";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openApp, patienceMs } from "./support/artist";
import { press } from "./support/keyboard";
import { openBrowser, serve } from "./support/place";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  place = await serve();
  const wav = fileURLToPath(new URL("threePhrases.wav", import.meta.url));
  browser = await openBrowser({ kind: "recording", wav });
  const english = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: "en-US" });
  page = await english.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, place.url);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

const stop = () => page.getByTestId("tour").getAttribute("data-stop");
const tallest = () =>
  page
    .getByTestId("voice-picture")
    .evaluate((picture) =>
      Math.max(
        ...[...picture.children].map((bar) =>
          Number(/scale\(1 ([\d.]+)\)/.exec(bar.getAttribute("transform") ?? "")?.[1]),
        ),
      ),
    );

describe("the first steps, with nothing but a keyboard", () => {
  it("are offered to someone new", async () => {
    await press(page, page.getByRole("link", { name: "First steps" }).first());
    await page.getByRole("heading", { level: 1, name: "First steps" }).waitFor();
  });

  it("show one's own voice while it sounds", async () => {
    await page.getByTestId("voice-picture").waitFor();
    expect(await tallest()).toBeLessThan(0.1);
    await press(page, page.getByRole("button", { name: "Try the microphone" }).filter({ visible: true }));
    await expect.poll(tallest, { timeout: patienceMs }).toBeGreaterThan(0.3);
  });

  it("speak a tour, and show what is said", async () => {
    await press(page, page.getByRole("button", { name: "Begin the tour" }));
    await page.getByTestId("tour").getByText("I am the second person in the room.").waitFor();
    expect(await stop()).toBe("welcome");
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.target}`)).toEqual([]);
  });

  it("go on by key, to the end, and keep nothing of what was tried", async () => {
    const seen: (string | null)[] = [];
    while ((await page.getByTestId("tour").count()) > 0) {
      seen.push(await stop());
      await press(page, page.getByRole("button", { name: "Go on" }));
    }
    expect(seen).toContain("accident");
    await page.getByText("That was the tour.").waitFor();
    const sessions = await page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name));
    expect(sessions).toContain("gloveside-log");
    expect(await page.getByTestId("session").count()).toBe(0);
  });

  it("end in a session to watch", async () => {
    await press(page, page.getByRole("button", { name: "Practice with a recorded artist" }).filter({ visible: true }));
    await page.getByTestId("session").waitFor();
  });
});

describe("in Spanish", () => {
  let context: Awaited<ReturnType<Browser["newContext"]>>;
  beforeAll(async () => {
    context = await browser.newContext({ viewport: { width: 360, height: 640 }, locale: "es-MX" });
    page = await context.newPage();
    page.setDefaultTimeout(patienceMs);
    await openApp(page, place.url);
  });
  afterAll(() => context?.close());

  it("the device's language is taken, and told to the browser", async () => {
    await page.getByRole("heading", { level: 1, name: "Preparar" }).waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe("es");
  });

  it("a session speaks Spanish, shows its phrases and listens for them, and goes on by key", async () => {
    await page.getByRole("textbox", { name: "Referencia del cliente" }).fill("C-3");
    await page.getByRole("textbox", { name: "Artista" }).fill("Artista A");
    await page.getByRole("textbox", { name: "Puesto" }).fill("Puesto 1");
    await page.getByRole("button", { name: "Empezar la sesión" }).click();
    await page.getByTestId("session").waitFor();
    await page.getByTestId("says").getByText("Sesión empezada.").waitFor();
    await page.locator('[data-testid="ear"][data-condition="on"]').waitFor();
    await page.getByTestId("may-say").getByText("completado").waitFor({ state: "attached" });
    const before = await page.getByTestId("now").getAttribute("data-step");
    await page.keyboard.press("PageDown");
    await expect.poll(() => page.getByTestId("now").getAttribute("data-step")).not.toBe(before);
  });

  it("another language is chosen in the settings, and stays after a reload", async () => {
    const other = await context.newPage();
    await openApp(other, `${place.url}#settings`);
    // Not checked at once: the words of that language may still be on their way.
    await other.getByRole("radio", { name: "English" }).click({ force: true });
    await other.getByRole("heading", { level: 1, name: "Settings" }).waitFor();
    await other.getByRole("radio", { name: "High contrast" }).check({ force: true });
    await other.reload();
    await other.getByRole("heading", { level: 1, name: "Settings" }).waitFor();
    expect(await other.evaluate(() => document.documentElement.dataset.contrast)).toBe("more");
  });
});
