/** No microphone, permission denied, microphone lost, storage full, a file that is no protocol: said clearly, nothing lost. */
import { readFile } from "node:fs/promises";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { verifyRecord } from "../../src/export";
import { addProtocol, choose, done, fillIn, kindsOf, onDisk, openApp, patienceMs, start, step } from "./support/artist";
import { type MicrophoneSetting, openBrowser, serve } from "./support/place";
import { provedSmall } from "./support/provedSmall";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;

beforeAll(async () => {
  place = await serve();
});
afterEach(() => browser?.close());
afterAll(() => place?.close());

async function freshPage(microphone: MicrophoneSetting): Promise<Page> {
  browser = await openBrowser(microphone);
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  await openApp(page, place.url);
  return page;
}

describe("a microphone that is not there", () => {
  it("is said and shown when permission is denied, and keys go on working", async () => {
    const page = await freshPage({ kind: "denied" });
    await page.getByRole("button", { name: "Try the microphone" }).click();
    await page
      .getByText("“I may not use the microphone. Use the pedal or the screen.”")
      .waitFor({ timeout: patienceMs });
    await page.getByText("Microphone not allowed").waitFor({ timeout: patienceMs });
    await fillIn(page);
    await start(page);
    await page.getByTestId("ear").getByText("Microphone not allowed").waitFor({ timeout: patienceMs });
    await done(page);
    const [session] = await onDisk(page);
    expect(session && kindsOf(session)).toEqual(expect.arrayContaining(["EarLost", "StepDone"]));
  });

  it("is said and shown when there is none", async () => {
    const page = await freshPage({ kind: "missing" });
    await page.getByRole("button", { name: "Try the microphone" }).click();
    await page.getByText("“I find no microphone. Use the pedal or the screen.”").waitFor({ timeout: patienceMs });
    await page.getByText("No microphone found").waitFor({ timeout: patienceMs });
  });

  it("is said when it is lost in the middle, kept as a fact, and taken back when it returns", async () => {
    const page = await freshPage({ kind: "beeps" });
    await page.evaluate(() => {
      const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      let pulledOut = false;
      navigator.mediaDevices.getUserMedia = async (wanted) => {
        if (pulledOut) throw new DOMException("pulled out", "NotFoundError");
        const stream = await ask(wanted);
        const [track] = stream.getAudioTracks();
        Object.assign(globalThis, {
          pullOut: () => {
            pulledOut = true;
            track?.stop();
            track?.dispatchEvent(new Event("ended"));
          },
          plugIn: () => {
            pulledOut = false;
          },
        });
        return stream;
      };
    });
    await fillIn(page);
    await start(page);
    await page.getByTestId("ear").getByText("Listening").waitFor({ timeout: patienceMs });
    await page.evaluate(() => (globalThis as unknown as { pullOut: () => void }).pullOut());
    await page.getByTestId("says").getByText("I cannot hear you.").waitFor({ timeout: patienceMs });
    await page
      .getByTestId("ear")
      .getByText(/Microphone lost|No microphone found/)
      .waitFor({ timeout: patienceMs });
    await page.evaluate(() => (globalThis as unknown as { plugIn: () => void }).plugIn());
    await page.getByTestId("ear").getByText("Listening").waitFor({ timeout: patienceMs });
    const [session] = await onDisk(page);
    expect(session && kindsOf(session)).toEqual(expect.arrayContaining(["EarLost", "EarBack"]));
  });
});

/**
 * In the page: every new row is turned away as a full device does, or no longer. A disk and a quota that are truly full:
 * fullDisk.test.ts.
 */
function fillStorage(isFull: boolean): void {
  const here = globalThis as unknown as { realAdd?: IDBObjectStore["add"] };
  here.realAdd ??= IDBObjectStore.prototype.add;
  IDBObjectStore.prototype.add = isFull
    ? () => {
        throw new DOMException("no room", "QuotaExceededError");
      }
    : here.realAdd;
}

/** In the page: the log is not opened even to read, as Chromium does on a disk full to the last byte. */
function shutStore(): void {
  IDBDatabase.prototype.transaction = () => {
    throw new DOMException("Internal error opening backing store for indexedDB.open.", "UnknownError");
  };
}
/** In the page: nothing can be handed over. */
function refuseFiles(): void {
  URL.createObjectURL = () => {
    throw new DOMException("no room", "QuotaExceededError");
  };
}

describe("a storage that does not open, not even to read", () => {
  it("still hands over every fact that was kept, and says aloud and on the screen where no file can be made", async () => {
    const page = await freshPage({ kind: "beeps" });
    await fillIn(page);
    await start(page);
    await done(page);
    const kept = (await onDisk(page))[0]?.facts;
    await page.evaluate(shutStore);
    await page.keyboard.press("PageDown");
    const onPaper = page.getByTestId("says").getByText("write it on paper");
    await onPaper.waitFor({ timeout: patienceMs });
    const save = page.getByRole("button", { name: "Save what is kept so far" });
    const saving = page.waitForEvent("download");
    await save.click();
    const soFar = await readFile(await (await saving).path(), "utf8");
    expect(await verifyRecord(soFar, { acceptUnfinished: true })).toMatchObject({ intact: { ok: true } });
    expect(JSON.parse(soFar).entries.map((entry: { fact: unknown }) => entry.fact)).toEqual(kept);
    await page.getByTestId("savedFile").getByText("without spoken notes").waitFor({ timeout: patienceMs });
    // What it says of the fact that was not kept is over first.
    await onPaper.waitFor({ state: "detached", timeout: patienceMs });
    await page.evaluate(refuseFiles);
    await save.click();
    await onPaper.waitFor({ timeout: patienceMs });
    await page.getByTestId("savedFile").getByText("No file was made.").waitFor({ timeout: patienceMs });
  });
});

describe("a storage that is full", () => {
  it("moves nothing and says so; with room again the same report is kept", async () => {
    const page = await freshPage({ kind: "beeps" });
    await fillIn(page);
    await start(page);
    await done(page);
    const before = await step(page);
    const kept = (await onDisk(page))[0]?.facts;
    await page.evaluate(fillStorage, true);
    await page.keyboard.press("PageDown");
    await page.getByText("Not kept. The storage is full.").first().waitFor({ timeout: patienceMs });
    await page.getByTestId("says").getByText("Not kept. The storage is full.").waitFor({ timeout: patienceMs });
    expect(await step(page)).toBe(before);
    expect((await onDisk(page))[0]?.facts).toEqual(kept);
    const saving = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save what is kept so far" }).click();
    const soFar = await readFile(await (await saving).path(), "utf8");
    expect(await verifyRecord(soFar, { acceptUnfinished: true })).toMatchObject({ intact: { ok: true } });
    expect(JSON.parse(soFar).entries.map((entry: { fact: unknown }) => entry.fact)).toEqual(kept);
    await page.evaluate(fillStorage, false);
    await done(page);
    expect((await onDisk(page))[0]?.facts.length).toBeGreaterThan(kept?.length ?? 0);
  });
});

describe("a protocol file", () => {
  it("that is cut off is refused with the reason, and the bundled ones stay", async () => {
    const page = await freshPage({ kind: "beeps" });
    await addProtocol(page, JSON.stringify(provedSmall).slice(0, -40));
    await page.getByText("The file is not JSON.").waitFor({ timeout: patienceMs });
    expect(await page.getByRole("radiogroup", { name: "Protocol" }).getByRole("radio").count()).toBe(3);
  });

  it("that names an unknown item is refused with the item and the place", async () => {
    const page = await freshPage({ kind: "beeps" });
    const strange = structuredClone(provedSmall);
    strange.breakdown[0]?.effects.splice(0, 1, { verb: "touch", item: "ghost" });
    await addProtocol(page, JSON.stringify(strange));
    await page.getByText('No item is called "ghost".').waitFor({ timeout: patienceMs });
    await page.getByText("$.breakdown[0].effects[0].item").waitFor({ timeout: patienceMs });
  });

  it("that is sound is added, chosen, and still there after a reload", async () => {
    const page = await freshPage({ kind: "beeps" });
    await choose(page, provedSmall);
    await page.reload();
    await page.getByRole("radio", { name: "Small" }).waitFor({ state: "attached", timeout: patienceMs });
  });
});
