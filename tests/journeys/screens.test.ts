/**
 * Every screen in every state, in both languages: no accessibility violation in any look, every target large enough,
 * no text cut off, at the sizes that hang on a wall.
 */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { spokenLanguages } from "../../src/announcements/phrasebooks";
import { wordsFor } from "../../src/screen/words";
import { patienceMs } from "./support/artist";
import { everyScreen } from "./support/everyScreen";
import { cutTexts, outOfSight, smallTargets, violations } from "./support/faults";
import { openBrowser, serve } from "./support/place";
import { looks, sizes, wear } from "./support/wear";

/** Seen without a scroll: first aid with its question everywhere, what can happen at work wherever there is room for it. */
const inSight: Readonly<Record<string, { readonly what: string; readonly fromWidth: number }>> = {
  "session, first aid": { what: '[data-testid="now"] > *, [data-testid="question"]', fromWidth: 0 },
  "session, at work": { what: "main button", fromWidth: 768 },
};

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

interface Faults {
  readonly visited: string[];
  readonly axe: string[];
  readonly targets: string[];
  readonly texts: string[];
  readonly unseen: string[];
}

async function examine(page: Page, screen: string, faults: Faults): Promise<void> {
  if (process.env.WALK) console.error(`${new Date().toISOString().slice(14, 19)} ${screen}`);
  const at = (where: string) => (fault: string) => `${screen}, ${where}: ${fault}`;
  faults.visited.push(screen);
  for (const look of looks) {
    await wear(page, look);
    // Only colours differ from look to look.
    const found = await violations(page, look === "light" ? undefined : ["color-contrast"]);
    faults.axe.push(...found.map(at(look)));
  }
  await wear(page, "light");
  for (const [width, height] of sizes) {
    await page.setViewportSize({ width, height });
    const size = at(`${width} by ${height}`);
    faults.targets.push(...(await smallTargets(page)).map(size));
    faults.texts.push(...(await cutTexts(page)).map(size));
    const wanted = inSight[screen];
    if (wanted && width >= wanted.fromWidth) faults.unseen.push(...(await outOfSight(page, wanted.what)).map(size));
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}

describe.each(spokenLanguages)("every screen in every state, %s", (language) => {
  const faults: Faults = { visited: [], axe: [], targets: [], texts: [], unseen: [] };

  beforeAll(async () => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: language });
    const page = await context.newPage();
    page.setDefaultTimeout(patienceMs);
    await everyScreen(page, place.url, language, (screen) => examine(page, screen, faults));
    await context.close();
  }, 600_000);

  it("was seen", () => {
    expect(faults.visited.length).toBeGreaterThan(30);
  });

  it("has no violation in light, dark, strong contrast or forced colours", () => {
    expect(faults.axe).toEqual([]);
  });

  it("has targets of 44 px and more, in a session of 96 px and more, at every size", () => {
    expect(faults.targets).toEqual([]);
  });

  it("has no text cut off, stuck out, broken in a word or laid on another, at every size", () => {
    expect(faults.texts).toEqual([]);
  });

  it("shows first aid and its question whole at every size, and all that can happen at work on a tablet, without a scroll", () => {
    expect(faults.unseen).toEqual([]);
  });
});

describe.each(spokenLanguages)("the way to the pages, %s", (language) => {
  it("has every page of the way in sight at once on a tablet, upright and on its side", async () => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: language });
    const page = await context.newPage();
    page.setDefaultTimeout(patienceMs);
    await page.goto(`${place.url}#mixing`);
    const { all } = wordsFor(language).pages;
    for (const [width, height] of sizes.filter(([each]) => each >= 768)) {
      await page.setViewportSize({ width, height });
      const isUpright = width < height;
      if (isUpright) await page.getByRole("button", { name: all, exact: true }).click();
      const way = isUpright ? page.getByRole("dialog", { name: all }) : page.getByRole("navigation", { name: all });
      const settings = way.locator('a[href="#settings"]');
      await settings.waitFor();
      const hidden = await way.locator('a[href^="#"]').evaluateAll((links) =>
        links.flatMap((link) => {
          const { top, bottom } = link.getBoundingClientRect();
          return link.checkVisibility() && top >= 0 && bottom <= innerHeight ? [] : [link.textContent];
        }),
      );
      expect({ width, hidden }).toEqual({ width, hidden: [] });
      if (isUpright) await page.keyboard.press("Escape");
    }
    await context.close();
  });
});
