/** Every screen and state: no accessibility violation in light and dark, nothing cut off at the sizes that hang on a wall. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Protocol } from "../../src/session/protocol";
import { choose, fillIn, openApp, patienceMs, start } from "./support/artist";
import { openBrowser, serve } from "./support/place";
import { provedSmall } from "./support/provedSmall";
import { actOnce } from "./support/walker";

const quickProtocol = Protocol.parse({
  ...provedSmall,
  products: provedSmall.products.map((slot) => ({
    ...slot,
    label: { ...slot.label, contactSec: 3, reapplyWithinSec: null },
  })),
});
const wipes = { wipeChair: "chair", wipeLamp: "lamp" };

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

async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).analyze();
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} ${target}: ${failureSummary}`),
  );
}

/** The page does not scroll sideways, and every target of the deck is wholly on the screen. */
async function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const { innerWidth, innerHeight } = globalThis;
    const wide = document.documentElement.scrollWidth > innerWidth ? ["the page scrolls sideways"] : [];
    const outside = [...document.querySelectorAll("nav button")].flatMap((button) => {
      const box = button.getBoundingClientRect();
      const isShown = box.width > 0;
      const isInside = box.left >= 0 && box.right <= innerWidth + 1 && box.bottom <= innerHeight + 1;
      return isShown && !isInside ? [button.textContent ?? ""] : [];
    });
    const spilled = [...document.querySelectorAll("nav button b, h1")].flatMap((text) =>
      text.scrollWidth > text.clientWidth + 1 && text.clientWidth > 0 ? [`spills: ${text.textContent}`] : [],
    );
    return [...wide, ...outside, ...spilled];
  });
}

/** Does what the screen asks until the question stands there. */
const until = (page: Page, question: string) =>
  expect
    .poll(
      async () => {
        const asked = await page.evaluate(
          () => document.querySelector('[data-testid="question"]')?.getAttribute("aria-label") ?? null,
        );
        if (asked !== question) await actOnce(page, wipes);
        return asked;
      },
      { timeout: patienceMs, interval: 200 },
    )
    .toBe(question);

describe.each(["light", "dark"] as const)("the screens, %s", (colorScheme) => {
  let context: BrowserContext;
  let page: Page;

  beforeAll(async () => {
    context = await browser.newContext({ viewport: { width: 1280, height: 800 }, colorScheme });
    page = await context.newPage();
    page.setDefaultTimeout(patienceMs);
    await openApp(page, place.url);
  });
  afterAll(() => context?.close());

  it("prepare has no violation, empty or with its faults shown", async () => {
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: "Start the session" }).click();
    await page.getByText("Client reference is missing").waitFor();
    expect(await violations(page)).toEqual([]);
  });

  it("the station screen has none: a step, all phrases, a refusal, the reasons", async () => {
    await choose(page, quickProtocol);
    await fillIn(page);
    await start(page);
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: "All phrases" }).click();
    await page.getByRole("dialog").waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: "Back to the step" }).click();
    await page.keyboard.press("q");
    await page.getByRole("alert").getByText("Not at this point.").waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("PageDown");
    await page.keyboard.press("k");
    await page.getByTestId("question").getByText("Why is it left out?").waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("n");
  });

  it("at work, naming, counting sharps, wet clocks, first aid and close have none", async () => {
    await expect
      .poll(
        async () => {
          const kind = await page.getByTestId("now").getAttribute("data-kind");
          if (kind !== "atWork") await actOnce(page, wipes);
          return kind;
        },
        { timeout: patienceMs },
      )
      .toBe("atWork");
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: "Touched touched something else" }).first().click();
    await page.getByTestId("question").getByRole("button", { name: "lamp" }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByTestId("question").getByRole("button", { name: "lamp" }).click();
    await until(page, "1 should be in the container. How many are?");
    expect(await violations(page)).toEqual([]);
    await until(page, "Stayed wet?");
    expect(await violations(page)).toEqual([]);
    await until(page, "Close and seal?");
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("c");
    await page.getByTestId("sealing").getByText("Sealed").waitFor();
    expect(await violations(page)).toEqual([]);
  });

  it("first aid has none", async () => {
    await page.getByRole("button", { name: "Next client" }).click();
    await fillIn(page);
    await start(page);
    await page.getByRole("button", { name: "Accident accident alarm" }).click();
    await page.getByRole("heading", { name: "First aid first" }).waitFor();
    expect(await violations(page)).toEqual([]);
  });
});

describe.each([
  [360, 640],
  [768, 1024],
  [1280, 800],
  [1920, 1080],
  [1024, 768],
])("at %i by %i", (width, height) => {
  it("the form, twelve steps of a set-up and first aid fit, and every target is in reach", async () => {
    const context = await browser.newContext({ viewport: { width, height } });
    const page = await context.newPage();
    page.setDefaultTimeout(patienceMs);
    await openApp(page, place.url);
    expect(await cutOff(page)).toEqual([]);
    await fillIn(page);
    await start(page);
    const faults: string[] = [];
    for (let step = 0; step < 12; step++) {
      faults.push(...(await cutOff(page)));
      await page.keyboard.press("PageDown");
      await page.waitForTimeout(60);
    }
    await page.keyboard.press("F9");
    await page.getByRole("heading", { name: "First aid first" }).waitFor();
    expect([...faults, ...(await cutOff(page))]).toEqual([]);
    await context.close();
  });
});
