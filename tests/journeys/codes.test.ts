/** Lots by camera in a real Chromium whose camera plays a film of ours: codes held up, turned and badly lit. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type { SessionFact } from "../../src/session/fact";
import { type CodeKind, codePicture, film, type Spoilt } from "../support/codePictures";
import { atStep, choose, done, fillIn, onDisk, openApp, patienceMs, start } from "./support/artist";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { provedSmall } from "./support/provedSmall";

const folder = mkdtempSync(join(tmpdir(), "gloveside-film-"));
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let watched: Watched;

beforeAll(async () => {
  place = await serve();
});
afterEach(() => browser?.close());
afterAll(async () => {
  await place?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A browser before whose camera this code is held. */
async function heldUp(kind: CodeKind, text: string, spoilt: Spoilt = {}): Promise<Page> {
  const file = join(folder, `${crypto.randomUUID()}.y4m`);
  writeFileSync(file, film([{ picture: codePicture(kind, text, spoilt), seconds: 1 }]));
  browser = await openBrowser({ kind: "beeps" }, [`--use-file-for-fake-video-capture=${file}`]);
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  watched = await watch(context, place.url);
  const page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, place.url);
  await choose(page, provedSmall);
  return page;
}

const inDate = "(01)09521234543213(17)280131(10)N-204";
const readCode = (page: Page) => page.getByRole("button", { name: "Read a code with the camera" }).click();
const facts = async (page: Page): Promise<readonly SessionFact[]> => (await onDisk(page))[0]?.facts ?? [];

/** Starts, with the camera on unless it is to be asked for, and walks to the step that opens the needle. */
async function toTheNeedle(page: Page, byItself = true): Promise<void> {
  await fillIn(page);
  if (byItself) await page.getByRole("checkbox", { name: "Read codes by camera during the session" }).check();
  await start(page);
  for (let steps = 0; steps < 5; steps++) await done(page);
  await atStep(page, "openNeedle");
}

describe("on the prepare screen", () => {
  it("reads a code turned, out of focus and unevenly lit, and fills lot and day in for the thing chosen", async () => {
    const page = await heldUp("gs1datamatrix", inDate, { turnDeg: 12, blur: 0.2, shade: 0.6, grain: 8 });
    await readCode(page);
    await page.getByTestId("code").getByText("Lot N-204, good until 2028-01-31").waitFor();
    const { violations } = await new AxeBuilder({ page }).include("form").analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.getByRole("button", { name: "Take it for needle" }).click();
    expect(await page.getByRole("textbox", { name: "Lot" }).inputValue()).toBe("N-204");
    await fillIn(page);
    await start(page);
    const lots = await page.evaluate(async () => {
      const open = indexedDB.open("gloveside-log");
      const db = await new Promise<IDBDatabase>((ok) => (open.onsuccess = () => ok(open.result)));
      const all = db.transaction("sessions").objectStore("sessions").getAll();
      return new Promise((ok) => (all.onsuccess = () => ok(all.result[0].header.input.lots)));
    });
    expect(lots).toEqual([{ item: "needle", lot: "N-204", expiry: "2028-01-31", known: "scanned" }]);
    expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
  });

  it.each([
    ["ean13", "9521234543213", "This code names no lot."],
    ["datamatrix", "^FNC1010952123454321310ABC12317251231", "may have run lot and date into one"],
    ["qrcode", "hello", "cannot be read as a pack’s"],
    ["gs1-128", "(01)09521234543213(17)250131(10)N-101", "That is out of date."],
  ] as const)("says what is wrong with a %s that holds %s", async (kind, text, words) => {
    const page = await heldUp(kind, text);
    await readCode(page);
    await page.getByRole("alert").getByText(words).waitFor();
  });
});

describe("during the session, hands free", () => {
  it("reads the code back, and takes it for the needle once it is confirmed", async () => {
    const page = await heldUp("gs1-128", inDate, { turnDeg: -8, shade: 0.6 });
    await toTheNeedle(page);
    await page.getByTestId("question").getByText("needle: lot N-204, good until 2028-01-31?").waitFor();
    await page.getByTestId("says").getByText("november dash two zero four").waitFor();
    expect((await facts(page)).map(({ type }) => type)).not.toContain("v1.LotGiven");
    await page.keyboard.press("c");
    await expect
      .poll(async () => (await facts(page)).find(({ type }) => type === "v1.LotGiven"), { timeout: patienceMs })
      .toMatchObject({ item: "needle", lot: "N-204", expiry: "2028-01-31" });
    await done(page);
    // No pack is taken up any more: the camera is closed.
    await page.getByTestId("hold-up").waitFor({ state: "detached" });
    expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
  });

  it("opens the camera only when it is asked to scan, where that was not chosen before", async () => {
    const page = await heldUp("gs1-128", inDate);
    await toTheNeedle(page, false);
    expect(await page.getByTestId("hold-up").count()).toBe(0);
    await page.keyboard.press("e");
    await page.getByTestId("says").getByText("Hold the code up to the camera.").waitFor();
    await page.getByTestId("question").getByText("needle: lot N-204, good until 2028-01-31?").waitFor();
    await page.keyboard.press("c");
    await done(page);
    await page.getByTestId("hold-up").waitFor({ state: "detached" });
  });

  it("refuses a pack past its day aloud, and keeps the refusal", async () => {
    const page = await heldUp("gs1datamatrix", "(01)09521234543213(17)250131(10)N-101");
    await toTheNeedle(page);
    await page.getByTestId("says").getByText("Needle: out of date. Use one in date.").waitFor();
    expect((await facts(page)).slice(-2)).toMatchObject([
      { type: "v1.LotShown", lot: "N-101" },
      { type: "v1.Refused", reason: "outOfDate", item: "needle" },
    ]);
  });

  it("says it when a code cannot be read, and keeps that", async () => {
    const page = await heldUp("qrcode", "hello");
    await toTheNeedle(page);
    await page.getByTestId("says").getByText("I cannot read that code.").waitFor();
    expect((await facts(page)).at(-1)).toMatchObject({ type: "v1.Refused", reason: "codeUnreadable", item: "needle" });
  });
});
