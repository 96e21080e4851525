/**
 * The browser is killed at twenty random moments of a session driven by keys, and opened again on the same profile.
 * What the screen had shown as kept is on disk, word for word; the session finishes; its record follows from its facts.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { verifyRecord } from "../../src/export";
import { Protocol } from "../../src/session/protocol";
import { choose, fillIn, onDisk, openApp, patienceMs, start } from "./support/artist";
import { type Killable, openKillable } from "./support/killable";
import { serve } from "./support/place";
import { provedSmall } from "./support/provedSmall";
import { actOnce } from "./support/walker";

const kills = 20;
const contactSec = 4;
const wipes = { wipeChair: "chair", wipeLamp: "lamp" };
const quickProtocol = Protocol.parse({
  ...provedSmall,
  products: provedSmall.products.map((slot) => ({
    ...slot,
    label: { ...slot.label, contactSec, reapplyWithinSec: null },
  })),
});

/** Park and Miller's generator, so that a failure can be walked again. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

const profile = mkdtempSync(join(tmpdir(), "gloveside-kill-"));
let place: Awaited<ReturnType<typeof serve>>;
let life: Killable;
let page: Page;
/** How many facts the screen of this life had shown as kept. Told by the page the moment it happens. */
let shown = 0;

beforeAll(async () => {
  place = await serve();
});
afterAll(async () => {
  await life?.context.close().catch(() => undefined);
  await place?.close();
  rmSync(profile, { recursive: true, force: true });
});

async function live(): Promise<void> {
  life = await openKillable(profile);
  await life.context.exposeBinding("tellShown", (_, facts: number) => {
    shown = Math.max(shown, facts);
  });
  await life.context.addInitScript(() => {
    const tell = () => {
      const facts = document.querySelector('[data-testid="session"]')?.getAttribute("data-facts");
      if (facts) (globalThis as unknown as { tellShown: (facts: number) => void }).tellShown(Number(facts));
    };
    new MutationObserver(tell).observe(document, { subtree: true, childList: true, attributes: true });
  });
  page = await life.context.newPage();
  await openApp(page, place.url);
}

const resumed = async (): Promise<void> => {
  await page.getByRole("button", { name: "Take it up again" }).click();
  await page.getByTestId("session").waitFor({ timeout: patienceMs });
};

const sleep = (ms: number) => new Promise((done) => setTimeout(done, ms));

describe("a browser killed at twenty moments of a session", () => {
  it("has every fact it had shown, in the same order, each time it is opened again", async () => {
    const random = randomFrom(20_261_125);
    await live();
    await choose(page, quickProtocol);
    await fillIn(page);
    await start(page);
    let before: readonly unknown[] = [];
    for (let killed = 0; killed < kills; killed++) {
      for (let acts = Math.floor(random() * 4); acts > 0; acts--) {
        await actOnce(page, wipes);
        await sleep(40 + random() * 120);
      }
      await actOnce(page, wipes);
      await sleep(random() * 60);
      await life.kill();
      const acknowledged = shown;
      shown = 0;
      await live();
      const facts = (await onDisk(page))[0]?.facts ?? [];
      expect(facts.length, `kill ${killed + 1}`).toBeGreaterThanOrEqual(acknowledged);
      expect(facts.slice(0, before.length), `kill ${killed + 1}`).toEqual(before);
      before = facts;
      await resumed();
    }
  });

  it("finishes, and seals a record that is intact and follows from its facts", async () => {
    await expect.poll(() => actOnce(page, wipes), { timeout: 240_000, interval: 250 }).toBe("closed");
    await page.getByTestId("sealing").getByText("Sealed").waitFor({ timeout: patienceMs });
    const saving = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save the record" }).click();
    const text = await readFile(await (await saving).path(), "utf8");
    const verdict = await verifyRecord(text);
    expect(verdict).toMatchObject({ intact: { ok: true }, follows: { ok: true } });
    const record = JSON.parse(text);
    const kinds = record.entries.map((entry: { fact: { type: string } }) => entry.fact.type);
    expect(kinds.filter((kind: string) => kind === "v1.GapSeen").length).toBe(kills);
    const ready = record.closing.summary.wetClocks.filter((clock: { ended: string }) => clock.ended === "ready");
    expect(ready.map((clock: { surface: string }) => clock.surface).sort()).toEqual(["chair", "lamp"]);
    expect(Math.min(...ready.map((clock: { creditedMs: number }) => clock.creditedMs))).toBeGreaterThanOrEqual(
      contactSec * 1000,
    );
  });
});
