/** Every page in a language that nobody speaks: all texts come out of a phrasebook, and longer ones are not cut off. */
import { execFileSync } from "node:child_process";
import type { AddressInfo } from "node:net";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { staticServer } from "../../bin/staticServer.mjs";
import { en } from "../../src/screen/words/en";
import { pseudo } from "../pseudo/pseudo";
import { recordedSources } from "../pseudo/sources";
import { patienceMs } from "./support/artist";
import { everyScreen } from "./support/everyScreen";
import { cutTexts } from "./support/faults";
import { openBrowser } from "./support/place";

let browser: Browser;
let server: ReturnType<typeof staticServer>;

beforeAll(async () => {
  execFileSync("npx", ["vite", "build", "--config", "tests/pseudo/vite.config.ts", "--logLevel", "warn"], {
    stdio: "ignore",
  });
  server = staticServer("out/pseudo");
  await new Promise<void>((ready) => server.listen(0, "localhost", ready));
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  server?.closeAllConnections();
  server?.close();
});

/** Texts with a letter that stand in no bracket. */
const unphrased = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const isFingerprint = /^([0-9a-f]{4} ?)+$/;
    const walk = document.createTreeWalker(document.querySelector("main, #app") ?? document.body, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const element = node.parentElement;
      const whole = element?.closest("p, li, label, button, a, h1, h2, h3, dd, dt, option, legend")?.textContent ?? "";
      const text = (node.textContent ?? "").trim();
      const isShown = element?.checkVisibility({ visibilityProperty: true }) ?? false;
      if (
        isShown &&
        /\p{L}{2}/u.test(text) &&
        !isFingerprint.test(text) &&
        !text.includes("⟦") &&
        !/⟦[^⟧]*$/.test(whole.split(text)[0] ?? "")
      )
        found.push(text);
    }
    return found;
  });

it("takes every text from a phrasebook, and cuts none off on a phone", async () => {
  const { port } = server.address() as AddressInfo;
  const page = await browser.newPage({ viewport: { width: 360, height: 640 }, locale: "es" });
  page.setDefaultTimeout(patienceMs);
  const [strange, cut, visited]: [string[], string[], string[]] = [[], [], []];
  const visit = async (screen: string) => {
    visited.push(screen);
    const texts = (await unphrased(page)).filter((text) => !recordedSources.has(text));
    strange.push(...texts.map((text) => `${screen}: ${text}`));
    const faults = await cutTexts(page);
    // A made-up word may be longer than a line; a real one is hyphenated by its translator.
    cut.push(...faults.filter((fault) => !fault.startsWith("breaks")).map((fault) => `${screen}: ${fault}`));
  };
  await everyScreen(page, `http://localhost:${port}/`, "es", visit, "pages", pseudo(en));
  expect(visited.length).toBeGreaterThan(12);
  expect(strange).toEqual([]);
  expect(cut).toEqual([]);
});
