/** Keeping in a real Chromium, by keyboard: a locked backup is made, and a new device takes it back, whole or not at all. */
import { readFile } from "node:fs/promises";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { violationsAtSizes } from "./support/accessible";
import { choose, done, fillIn, onDisk, openApp, patienceMs, start } from "./support/artist";
import { press, type } from "./support/keyboard";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { provedSmall } from "./support/provedSmall";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let watched: Watched;
let file: Buffer;
const passphrase = "nine green bottles";

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  page = await newDevice();
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

/** A browser that has never seen the app. */
async function newDevice(): Promise<Page> {
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  watched = await watch(context, place.url);
  return openPage();
}

async function openPage(): Promise<Page> {
  const opened = await context.newPage();
  opened.setDefaultTimeout(patienceMs);
  await openApp(opened, place.url);
  return opened;
}

const toKeeping = async () => {
  await press(page, page.getByRole("link", { name: "Keeping", exact: true }));
  await page.getByRole("heading", { level: 1, name: "Keeping" }).waitFor();
};
const section = (name: string) => page.getByRole("region", { name, exact: true });
const passphraseIn = (name: string) => section(name).getByLabel("Passphrase", { exact: true });

it("shows whether the browser promised to keep things, how much room there is, and the key's fingerprint", async () => {
  await toKeeping();
  await page
    .getByTestId("promise")
    .getByText(/promise/)
    .waitFor();
  expect(await page.getByTestId("room").textContent()).toMatch(/^[\d.]+ MB used of [\d.]+ [MG]B\.$/);
  expect(await page.getByTestId("fingerprint").textContent()).toMatch(/^([0-9a-f]{4} ){15}[0-9a-f]{4}$/);
});

it("asks for a passphrase that is long enough, then hands over one locked file", async () => {
  await press(page, page.getByRole("link", { name: "Prepare", exact: true }));
  await choose(page, provedSmall);
  await fillIn(page);
  await page.getByRole("textbox", { name: "Lot" }).fill("N-204");
  await start(page);
  await done(page);
  await page.close();
  page = await openPage();
  await toKeeping();
  const make = page.getByRole("button", { name: "Make a backup" });
  await type(page, passphraseIn("Back up"), "short");
  expect(await make.isDisabled()).toBe(true);
  await type(page, passphraseIn("Back up"), passphrase);
  const saving = page.waitForEvent("download");
  await press(page, make);
  const download = await saving;
  expect(download.suggestedFilename()).toMatch(/^gloveside-backup-\d{4}-\d\d-\d\d\.gloveside$/);
  file = await readFile(await download.path());
  await page.getByTestId("backed-up").getByText("The file is whole: 1 sessions").waitFor();
  expect(file.toString("latin1")).not.toContain("N-204");
});

const takeBack = async (bytes: Buffer, secret: string) => {
  await page
    .getByTestId("backup-file")
    .setInputFiles({ name: "a.gloveside", mimeType: "application/octet-stream", buffer: bytes });
  await type(page, passphraseIn("Restore"), secret);
  await press(page, page.getByRole("button", { name: "Restore it" }));
};
const told = (text: string) => page.getByTestId("restored").getByText(text).waitFor();

it("on a new device refuses a wrong passphrase and an altered file, and changes nothing", async () => {
  const before = (await onDisk(page))[0]?.facts;
  page = await newDevice();
  await toKeeping();
  await takeBack(file, "nine green bottle");
  await told("The passphrase does not open it");
  const altered = Buffer.from(file);
  altered.writeUInt8(altered.readUInt8(altered.length - 5) ^ 1, altered.length - 5);
  await takeBack(altered, passphrase);
  await told("Nothing was changed.");
  await takeBack(Buffer.alloc(3_000_000), passphrase);
  await told("This is not a backup made here.");
  expect(await onDisk(page)).toEqual([]);
  await takeBack(file, passphrase);
  await told("Restored: 1 sessions (0 were here already)");
  expect((await onDisk(page))[0]?.facts).toEqual(before);
});

it("finds what was restored; another device's unfinished session is not offered to be taken up", async () => {
  await press(page, page.getByRole("link", { name: "Records", exact: true }));
  await type(page, page.getByRole("search").getByLabel("Lot", { exact: true }), "N204");
  await page.getByTestId("found").getByText("1 session").waitFor();
  await press(page, page.getByRole("link", { name: "Prepare", exact: true }));
  await page.getByRole("radio", { name: "Small" }).waitFor({ state: "attached" });
  expect(await page.getByRole("button", { name: "Take it up again" }).count()).toBe(0);
});

it("keeps a list of the keys that are trusted", async () => {
  await toKeeping();
  const key = "00 11".repeat(16).replaceAll("00 11", "0011 ");
  await type(page, page.getByLabel("Whose device"), "Station 2");
  await type(page, page.getByLabel("Fingerprint", { exact: true }), "zz");
  await page.getByText("A fingerprint has 64 letters and digits").waitFor();
  await type(page, page.getByLabel("Fingerprint", { exact: true }), key);
  await press(page, page.getByRole("button", { name: "Trust this key" }));
  await page.getByTestId("trusted").getByText("Station 2").first().waitFor();
  await page.reload();
  await page.getByTestId("trusted").getByText("Station 2").first().waitFor();
});

it.each(["light", "dark"] as const)("is accessible in the %s, on a phone as on a screen", async (colorScheme) => {
  expect(await violationsAtSizes(page, "keeping", colorScheme)).toEqual([]);
  expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
});
