/**
 * The usual phrases taught by a voice that the phrase model was never trained on, each said when it is asked for: what it is
 * worth is shown before and after, it is used from then on, saved as a file, undone, and deleted down to the last byte.
 */
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { phrase, rateHz } from "../../audio/make/rehearsal/artistVoice";
import { parse } from "../../src/intent/spoken";
import { readOwnVoice } from "../../src/recogniser/ownVoice/ownVoice";
import { openApp, patienceMs } from "./support/artist";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { furnish, sayInRoom } from "./support/room";

let folder = "";
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;
let watched: Watched;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "teaching-phrases-"));
  place = await serve();
  browser = await openBrowser();
  const context = await browser.newContext({ viewport: { width: 768, height: 1024 } });
  await furnish(context);
  watched = await watch(context, place.url);
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, `${place.url}#voice`);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
  await rm(folder, { recursive: true });
});

const taught = () => page.getByTestId("taught");
const state = () => page.getByTestId("lesson").getAttribute("data-state");
const quietFirst = (sound: Float32Array): Float32Array => {
  const longer = new Float32Array(sound.length + 0.4 * rateHz);
  longer.set(sound, 0.4 * rateHz);
  return longer;
};

/** Says what is asked for, until so many takes were given; then has enough. */
async function giveLesson(takes: number): Promise<void> {
  await page.getByRole("checkbox", { name: /I agree/ }).check({ force: true });
  await page.getByRole("button", { name: "Begin" }).click();
  for (let given = 0; given < takes; given++) {
    await page.locator('[data-testid="lesson"][data-state="listening"]').waitFor();
    const asked = parse((await page.getByTestId("say-now").textContent()) ?? "");
    if (asked === null) throw new Error("what is asked for is no phrase of ours");
    await sayInRoom(page, quietFirst(phrase(asked.address, asked.command, folder)));
    await expect.poll(state, { timeout: patienceMs }).not.toBe("listening");
  }
  await page.getByRole("button", { name: "Enough. Learn from these" }).click();
  await taught().waitFor({ timeout: 150_000 });
}

const kept = () =>
  page.evaluate(async () => {
    const opening = indexedDB.open("gloveside-own-voice");
    const db = await new Promise<IDBDatabase>((opened) => {
      opening.onsuccess = () => opened(opening.result);
    });
    const all = db.transaction("voice").objectStore("voice").getAllKeys();
    const keys = await new Promise<IDBValidKey[]>((read) => {
      all.onsuccess = () => read(all.result);
    });
    db.close();
    return keys.map(String);
  });

it("learns the usual phrases as they are said, and shows what it understood before and after", async () => {
  await giveLesson(6);
  const shown = (await taught().textContent()) ?? "";
  const [, before, after] = /it understood (\d+) % before, (\d+) % after/.exec(shown) ?? [];
  expect(shown).toMatch(/[56] takes on/);
  expect(Number(after)).toBeGreaterThanOrEqual(Number(before));
  expect(shown).toMatch(/Learnt in \d+\.\d s/);
  await page.reload();
  await taught().getByText("% before").waitFor();
});

it("hears those phrases with what was taught", async () => {
  await page.goto(`${place.url}#prepare`);
  await page.getByRole("button", { name: "Try the microphone" }).click();
  await page.getByText("Listening").first().waitFor();
  const heard = page.getByText(/station completed/).first();
  for (let tries = 0; tries < 5 && !(await heard.isVisible()); tries++) {
    await sayInRoom(page, quietFirst(phrase("station", "done", folder)));
    await heard.waitFor({ timeout: 3_000 }).catch(() => undefined);
  }
  expect(await heard.isVisible()).toBe(true);
  await page.getByRole("button", { name: "Stop trying" }).click();
});

it("hands it over as a file that names its model, the day of the consent and no recording", async () => {
  await page.goto(`${place.url}#voice`);
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save as a file" }).click(),
  ]);
  const own = readOwnVoice(JSON.parse(await readFile(await file.path(), "utf8")));
  expect(own?.head).not.toBeNull();
  expect(own?.consentAt).toMatch(/^\d{4}-\d\d-\d\dT/);
  expect(own?.words).toEqual([]);
});

it("goes back to the lesson before when the last is undone", async () => {
  await giveLesson(3);
  await taught()
    .getByText(/[23] takes on/)
    .waitFor();
  await page.getByRole("button", { name: "Undo the last lesson" }).click();
  await taught()
    .getByText(/[56] takes on/)
    .waitFor();
});

it("is deleted down to the last byte, and asked nobody for anything", async () => {
  expect(await kept()).toContain("now");
  await page.getByRole("button", { name: "Delete all of it" }).click();
  await taught().getByText("Nothing yet.").waitFor();
  expect(await kept()).toEqual([]);
  expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
});
