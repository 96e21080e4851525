/**
 * No room left, in a real Chromium: a file system filled to the last byte, where mounting one is permitted, and a quota set
 * through the DevTools protocol. Said aloud each time, nothing kept is lost, and what is kept so far is handed over as a
 * file.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { verifyRecord } from "../../src/export";
import { choose, fillIn, onDisk, openApp, patienceMs, start } from "./support/artist";
import { openKillable } from "./support/killable";
import { launchOptions, serve } from "./support/place";
import { quickSmall, wipes } from "./support/provedSmall";
import { actOnce } from "./support/walker";

const folder = mkdtempSync(join(tmpdir(), "gloveside-full-"));
const disk = join(folder, "disk");
mkdirSync(disk);

function mountSmall(): string | null {
  try {
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=160m", "tmpfs", disk], { stdio: "pipe" });
    return null;
  } catch (error) {
    return (error as Error).message.trim().split("\n").at(-1) ?? "no reason given";
  }
}
const whyNot = mountSmall();

let place: Awaited<ReturnType<typeof serve>>;
let context: BrowserContext | null = null;

beforeAll(async () => {
  place = await serve();
});
afterEach(() => context?.close().catch(() => undefined));
afterAll(async () => {
  await place?.close();
  if (whyNot === null) execFileSync("umount", ["-l", disk]);
  rmSync(folder, { recursive: true, force: true });
});

/** Nothing fits any more, not even one byte: ever smaller files, until none can be written. */
function fillDisk(): void {
  for (const bytes of [200_000_000, 1_000_000, 50_000, 4_096, 4_096]) {
    expect(() => writeFileSync(join(disk, `filler-${bytes}`), Buffer.alloc(bytes, 7))).toThrow("ENOSPC");
  }
}
const makeRoom = () => execFileSync("find", [disk, "-maxdepth", "1", "-name", "filler-*", "-delete"]);

const shown = async (page: Page): Promise<number> =>
  Number(await page.getByTestId("session").getAttribute("data-facts"));

/** Acts until this is so. @returns how many facts the screen shows as kept then. */
async function actUntil(page: Page, isSo: () => Promise<boolean>): Promise<number> {
  const acted = async () => {
    if (await isSo()) return true;
    await actOnce(page, wipes);
    return isSo();
  };
  await expect.poll(acted, { timeout: patienceMs, interval: 100 }).toBe(true);
  return shown(page);
}
async function actFor(page: Page, more: number): Promise<number> {
  const before = await shown(page);
  return actUntil(page, async () => (await shown(page)) >= before + more);
}

async function begin(page: Page): Promise<void> {
  await choose(page, quickSmall);
  await fillIn(page);
  await start(page);
}

const factsOf = async (page: Page) => (await onDisk(page))[0]?.facts ?? [];
const full = "Not kept. The storage is full.";
const isTold = async (page: Page) => (await page.getByText(full).count()) > 0;

/** Said, shown, and what is kept so far handed over as a file that verifies. @returns the facts in it. */
async function whatIsOffered(page: Page): Promise<readonly unknown[]> {
  await page.getByTestId("says").getByText(full).waitFor({ timeout: patienceMs });
  const saving = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save what is kept so far" }).click();
  const soFar = await readFile(await (await saving).path(), "utf8");
  expect(await verifyRecord(soFar, { acceptUnfinished: true })).toMatchObject({ intact: { ok: true } });
  await page.getByTestId("savedFile").waitFor({ timeout: patienceMs });
  return JSON.parse(soFar).entries.map((entry: { fact: unknown }) => entry.fact);
}

it.skipIf(whyNot !== null)(
  `loses nothing on a disk that is full, then has room, then is killed${whyNot === null ? "" : ` (skipped: ${whyNot})`}`,
  async () => {
    const profile = join(disk, "profile");
    let life = await openKillable(profile);
    context = life.context;
    let page = await context.newPage();
    await openApp(page, place.url);
    await begin(page);
    const first = await actFor(page, 4);
    const before = (await factsOf(page)).slice(0, first);
    expect(before.length).toBe(first);
    fillDisk();
    const kept = await actUntil(page, () => isTold(page));
    expect(kept).toBeGreaterThanOrEqual(first);
    // Chromium may not open the store at all now, not even to read: the file comes all the same.
    const offered = await whatIsOffered(page);
    expect(offered.length).toBeGreaterThanOrEqual(kept);
    expect(offered.slice(0, before.length)).toEqual(before);
    makeRoom();
    const second = await actFor(page, 4);
    await life.kill();
    life = await openKillable(profile);
    context = life.context;
    page = await context.newPage();
    await openApp(page, place.url);
    const after = await factsOf(page);
    expect(after.length).toBeGreaterThanOrEqual(second);
    expect(after.slice(0, offered.length)).toEqual(offered);
    expect(await page.getByTestId("store-lost").count()).toBe(0);
  },
);

it("goes on within a quota until it is spent, says so, and goes on once it is raised", async () => {
  const profile = join(folder, "profile");
  const open = async () => {
    // A worker would fetch the app for offline work meanwhile, and spend the same quota.
    context = await chromium.launchPersistentContext(profile, {
      ...launchOptions({ kind: "beeps" }),
      viewport: { width: 1280, height: 800 },
      serviceWorkers: "block",
    });
    return context.newPage();
  };
  let page = await open();
  await openApp(page, place.url);
  const usage = await page.evaluate(async () => (await navigator.storage.estimate()).usage ?? 0);
  await context?.close();

  // Chromium asks for the quota at the first write of a browser's life, and then for half a minute not again.
  page = await open();
  const devtools = await page.context().newCDPSession(page);
  const { origin } = new URL(place.url);
  await devtools.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: usage + 80_000 });
  await openApp(page, place.url);
  await begin(page);
  const kept = await actUntil(page, () => isTold(page));
  const before = await factsOf(page);
  expect(before.length).toBe(kept);
  expect(kept).toBeGreaterThan(0);
  expect(await whatIsOffered(page)).toEqual(before);
  await devtools.send("Storage.overrideQuotaForOrigin", { origin });
  const more = await actFor(page, 2);
  const after = await factsOf(page);
  expect(after.length).toBeGreaterThanOrEqual(more);
  expect(after.slice(0, before.length)).toEqual(before);
});
