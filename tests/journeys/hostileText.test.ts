/**
 * HTML in every text that a person may type or hand in: client, artist, station, lot, the names and steps of a protocol,
 * the label, a device's name, a file's name. It is shown as it was written, on every screen that shows it, and does nothing.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { markup, withHtml } from "../support/papers";
import { atStep, choose, done, fillIn, openApp, patienceMs, start } from "./support/artist";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { quickSmall, wipes } from "./support/provedSmall";
import { actOnce } from "./support/walker";

const folder = mkdtempSync(join(tmpdir(), "gloveside-hostile-"));
const client = markup.slice(0, 60);
const lot = markup.slice(0, 40);
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let watched: Watched;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser({ kind: "denied" });
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  watched = await watch(context, place.url);
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
  rmSync(folder, { recursive: true, force: true });
});
/** Nothing was blocked, since nothing was tried. */
afterEach(() => expect(watched).toEqual({ foreign: [], violations: [], errors: [] }));

/** The text stands there as it was written, and has become neither an element nor a handler. */
async function isInert(at: Page, written: string = markup.slice(0, 40)): Promise<void> {
  const seen = await at.evaluate(() => ({
    text: [document.body.textContent, ...[...document.querySelectorAll("input")].map(({ value }) => value)].join("\n"),
    made: [...document.querySelectorAll("*")]
      .filter(
        (one) =>
          one.getAttributeNames().some((name) => name.startsWith("on")) ||
          one.getAttribute("src") === "x" ||
          (one.localName === "script" && (one.textContent ?? "").includes("globalThis.hurt")),
      )
      .map((one) => one.outerHTML),
    hurt: "hurt" in globalThis,
  }));
  expect(seen.text).toContain(written);
  expect({ made: seen.made, hurt: seen.hurt }).toEqual({ made: [], hurt: false });
}

async function saved(name: string, at: Page): Promise<string> {
  const [download] = await Promise.all([at.waitForEvent("download"), at.getByRole("button", { name }).click()]);
  return readFileSync(await download.path(), "utf8");
}

/** Away from the close, which holds its screen until the next client. */
async function toPage(id: string): Promise<void> {
  await page.close();
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await page.goto(`${place.url}#${id}`);
}

it("on the prepare screen", async () => {
  await openApp(page, place.url);
  await choose(page, withHtml(quickSmall));
  await fillIn(page, { client, artist: markup.slice(0, 80), station: markup.slice(0, 60) });
  await page.getByRole("textbox", { name: "Lot" }).fill(lot);
  await isInert(page);
});

it("in a session: its steps, its questions, what it says, and the list of things to choose from", async () => {
  await start(page);
  await isInert(page, markup);
  for (let steps = 0; steps < 5; steps++) await done(page);
  await atStep(page, "openNeedle");
  await isInert(page, markup);
  await done(page);
  await page.getByTestId("now").and(page.locator('[data-kind="atWork"]')).waitFor();
  await page.getByRole("button", { name: "Touched" }).click();
  await page.getByTestId("question").waitFor();
  await isInert(page, markup);
  await page.getByTestId("question").getByRole("button", { name: markup }).first().click();
  await page.getByTestId("now").and(page.locator('[data-kind="steps"]')).waitFor();
});

it("where a session is offered to be taken up again", async () => {
  const other = await context.newPage();
  other.setDefaultTimeout(patienceMs);
  await openApp(other, place.url);
  await other.getByRole("button", { name: "Take it up again" }).waitFor();
  await isInert(other);
  await other.close();
});

it("on the close, and on the paper of the record and of its deviations", async () => {
  while ((await actOnce(page, wipes)) !== "closed") await page.waitForTimeout(120);
  await page.getByTestId("sealing").getByText("Sealed").waitFor();
  await page.getByTestId("record-sheet").waitFor();
  await isInert(page, markup);
  await page.emulateMedia({ media: "print" });
  await isInert(page, markup);
  await page.emulateMedia({ media: null });
  await page.getByRole("radio", { name: "Deviations" }).check({ force: true });
  await page.getByTestId("deviation-sheet").waitFor();
  await isInert(page, markup);
});

it("in the client's part of the record", async () => {
  const part = page.getByTestId("personal-part");
  expect(await part.textContent()).toContain(client);
  await part.getByRole("button", { name: "Erase the client’s part" }).click();
  await part.getByRole("alertdialog").waitFor();
  await isInert(page);
  await part.getByRole("button", { name: "Keep it" }).click();
});

it("in the page that carries the record, opened from the disk", async () => {
  const file = join(folder, "page.html");
  writeFileSync(file, await saved("Page that verifies itself (HTML)", page));
  const alone = await browser.newContext({ offline: true });
  const seen = await watch(alone, "file://");
  const opened = await alone.newPage();
  await opened.goto(`file://${file}`);
  await opened.getByTestId("verdicts").and(opened.locator('[data-passed="true"]')).waitFor({ timeout: patienceMs });
  await isInert(opened, markup);
  expect(seen).toEqual({ foreign: [], violations: [], errors: [] });
  await alone.close();
});

it("on the Verify page, in a file's name and a device's name too", async () => {
  const record = await saved("Save the record", page);
  await toPage("verify");
  const name = "<img src=x onerror=globalThis.hurt=1>.json";
  await page.getByTestId("record-file").setInputFiles({ name, mimeType: "text/html", buffer: Buffer.from(record) });
  await page.getByTestId("checked").getByText(name).waitFor();
  await page.getByLabel("Whose device").fill(markup.slice(0, 80));
  await page.getByLabel("Fingerprint", { exact: true }).fill("0011".repeat(16));
  await page.getByRole("button", { name: "Trust this key" }).click();
  await page.getByTestId("trusted").getByText(markup.slice(0, 40)).first().waitFor();
  await isInert(page, markup);
  // A record that was altered shows what it found there.
  const altered = record.replace('"artist":"', `"artist":"${"<img src=x>"}`);
  await page.getByTestId("record-file").setInputFiles({ name, mimeType: "text/html", buffer: Buffer.from(altered) });
  await page.getByTestId("verdicts").and(page.locator('[data-passed="false"]')).waitFor();
  await isInert(page);
});

it("on the Records page and its recall list, found by it", async () => {
  await toPage("records");
  await page.getByRole("search").getByLabel("Lot", { exact: true }).fill(lot);
  await page.getByTestId("found").getByText("1 session").waitFor();
  await page.getByTestId("sessions").getByText("The client’s part").click();
  await page.getByTestId("personal-part").waitFor();
  await isInert(page);
  await page.evaluate(() => {
    globalThis.print = () => {
      const list = document.querySelector('[data-testid="recall-list"]');
      Object.assign(globalThis, { printed: [list?.textContent, list?.querySelectorAll("img, script").length] });
    };
  });
  await page.getByRole("button", { name: "Print the recall list" }).click();
  const printed = await page.evaluate(() => (globalThis as unknown as { printed: unknown[] }).printed);
  expect(printed).toEqual([expect.stringContaining(lot), 0]);
});

it("on the accident report, filled in from the record", async () => {
  await toPage("accident");
  await page.getByLabel("How it happened").fill(markup);
  await page.getByLabel("Device: type and brand").fill(markup);
  await page.getByTestId("accident-sheet").getByText(markup.slice(0, 40)).first().waitFor();
  await isInert(page, markup);
});
