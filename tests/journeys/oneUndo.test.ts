/** One undo at a time: while a protocol is open, that of the last act kept in the store waits in the list. */
import { afterAll, beforeAll, expect, it } from "vitest";
import { openApp, patienceMs } from "./support/artist";
import { openBrowser, serve } from "./support/place";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

it("shows no undo but the editor's own while a protocol is open", async () => {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: "en-US" });
  const page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, `${place.url}#protocols`);
  const undos = () => page.getByRole("button", { name: /^Undo/ }).filter({ visible: true });
  const all = () => page.getByRole("link", { name: "All protocols", exact: true }).click();
  const copy = () => page.getByRole("button", { name: /^Copy Cartridge/ }).click();
  const draft = page.getByTestId("drafts").locator("li");

  await copy();
  await page.getByTestId("editor").waitFor();
  await all();
  await draft.waitFor();
  await page.getByRole("button", { name: /^Remove Cartridge/ }).click();
  await draft.waitFor({ state: "detached" });
  await undos().waitFor();

  await page.getByRole("link", { name: /^Look at Cartridge/ }).click();
  await page.getByTestId("editor").waitFor();
  expect(await undos().count()).toBe(0);
  await all();
  await copy();
  await page.getByTestId("editor").waitFor();
  await undos().first().waitFor();
  expect(await undos().count()).toBe(1);
  expect(await undos().isDisabled()).toBe(true);
  await context.close();
});
