/** The breakdown as the screen shows its plan: when the station is free, what is wet, and now; on a phone as well. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Protocol } from "../../src/session/protocol";
import { bundledProtocols } from "../../src/session/protocols";
import { relabelled } from "../support/artistAtWork";
import { choose, fillIn, openApp, patienceMs, start, step } from "./support/artist";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { actOnce } from "./support/walker";

const protocol: Protocol = {
  ...relabelled(bundledProtocols[0] as Protocol, { contactSec: 12, reapplyWithinSec: null }),
  ...{ id: "shortWaits", name: { en: "Short waits", es: "Esperas cortas" } },
};
/** The surface that each wipe waits longest for. */
const wipes = Object.fromEntries(
  [...protocol.setUp, ...protocol.breakdown].flatMap((s) => {
    const wiped = s.effects.flatMap((e) => (e.verb === "wipe" ? [e.item] : []));
    const last = wiped.includes("sprayBottle") ? "sprayBottle" : wiped.at(-1);
    return last === undefined ? [] : [[s.id, last] as const];
  }),
);

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  watched = await watch(context, place.url);
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, place.url);
  await choose(page, protocol);
  await fillIn(page);
  await start(page);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

/** Does what the screen asks until this step stands there. */
const until = (id: string) =>
  expect
    .poll(
      async () => {
        const here = await step(page);
        if (here !== id) await actOnce(page, wipes);
        return here;
      },
      { timeout: 200_000, interval: 120 },
    )
    .toBe(id);

const plan = () => page.getByTestId("plan");

describe("the plan of the breakdown", () => {
  it("is not shown before there is one", async () => {
    expect(await plan().count()).toBe(0);
  });

  it("says when the station is free, and what is to be done until then, for eyes and for ears", async () => {
    await until("sharpsFirst");
    await plan().waitFor();
    expect(await plan().locator("p").textContent()).toMatch(/^Station free at \d\d:\d\d( [AP]M)?, in \d\d min/);
    await expect.poll(() => plan().locator("p").textContent()).toContain("Next set-up done by");
    const spoken = await plan().locator("li").allTextContents();
    expect(spoken[0]).toMatch(/^All sharps into container, now$/);
    expect(spoken.filter((text) => text.startsWith("Change gloves")).length).toBe(2);
    const { violations } = await new AxeBuilder({ page }).include('[data-testid="plan"]').analyze();
    expect(violations).toEqual([]);
  });

  it("shows hands, wet clocks and now as the work goes on", async () => {
    await until("wetTools");
    expect(await plan().locator('rect[data-kind="done"]').count()).toBeGreaterThan(5);
    expect(await plan().locator('rect[data-kind="wet"]').count()).toBeGreaterThan(1);
    expect(await plan().locator('line[data-kind="now"]').count()).toBe(1);
  });

  it("stands on a phone without cutting anything off", async () => {
    for (const [width, height] of [
      [360, 640],
      [768, 1024],
      [1280, 800],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.waitForTimeout(300);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      const box = await plan().boundingBox();
      expect(box && box.x >= 0 && box.x + box.width <= width).toBe(true);
      const folder = process.env.PICTURES;
      if (folder) await page.screenshot({ path: `${folder}/plan-${width}.png` });
    }
  });

  it("answers how long with the ready time", async () => {
    await page.keyboard.press("l");
    await expect
      .poll(() => page.locator('[data-part="talk"]').textContent(), { timeout: patienceMs })
      .toMatch(/All ready in/);
  });

  it("was made in a worker that evaluates nothing, and asked nobody else", () => {
    expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
  });
});
