/**
 * A kill or a power cut can tear the entry that the browser was writing. Chromium goes on behind the tear; seen in 156: at the
 * start after that, what was written since is gone, or all of the store is. We turn a fresh leaf first (src/log/freshLeaf.ts).
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from "vitest";
import { choose, fillIn, onDisk, openApp, patienceMs, start } from "./support/artist";
import { type Killable, openKillable } from "./support/killable";
import { serve } from "./support/place";
import { quickSmall, wipes } from "./support/provedSmall";
import { damageLog, tearNextEntry } from "./support/tornLog";
import { actOnce } from "./support/walker";

let place: Awaited<ReturnType<typeof serve>>;
let profile: string;
let life: Killable;
let page: Page;

beforeAll(async () => {
  place = await serve();
});
afterAll(() => place?.close());
beforeEach(async () => {
  profile = mkdtempSync(join(tmpdir(), "gloveside-torn-"));
  await live();
});
afterEach(async () => {
  await life?.context.close().catch(() => undefined);
  rmSync(profile, { recursive: true, force: true });
});

async function live(): Promise<void> {
  life = await openKillable(profile);
  page = await life.context.newPage();
  await openApp(page, place.url);
}

const factsOnDisk = async () => (await onDisk(page))[0]?.facts ?? [];

/** Acts until the screen shows that so many more facts are kept. @returns how many it shows then. */
async function actUntil(more: number): Promise<number> {
  const shown = async () => Number(await page.getByTestId("session").getAttribute("data-facts"));
  const before = await shown();
  const enough = async () => {
    await actOnce(page, wipes);
    return (await shown()) >= before + more;
  };
  await expect.poll(enough, { timeout: patienceMs, interval: 100 }).toBe(true);
  return shown();
}

async function beginSession(): Promise<void> {
  await choose(page, quickSmall);
  await fillIn(page);
  await start(page);
}

it("loses nothing that was kept, neither before the tear nor after it", async () => {
  await beginSession();
  const first = await actUntil(4);
  await life.kill();
  tearNextEntry(profile);
  await live();
  const before = await factsOnDisk();
  expect(before.length).toBeGreaterThanOrEqual(first);
  await page.getByRole("button", { name: "Take it up again" }).click();
  await page.getByTestId("session").waitFor({ timeout: patienceMs });
  const second = await actUntil(4);
  await life.kill();
  await live();
  const after = await factsOnDisk();
  expect(after.length).toBeGreaterThanOrEqual(second);
  expect(after.slice(0, before.length)).toEqual(before);
  expect(await page.getByTestId("store-lost").count()).toBe(0);
});

it("says so, until it is read, where the browser has deleted a store that was damaged", async () => {
  await beginSession();
  await actUntil(2);
  await life.kill();
  damageLog(profile);
  await live();
  const told = page.getByTestId("store-lost");
  await told.getByRole("heading", { name: "What this device kept is gone" }).waitFor();
  await page.reload();
  await told.getByText("found its store damaged").waitFor();
  await told.getByRole("button", { name: "I have read this" }).click();
  await told.waitFor({ state: "detached" });
  await page.reload();
  await page.getByRole("heading", { level: 1, name: "Prepare" }).waitFor();
  expect(await told.count()).toBe(0);
});
