/**
 * Nobody waits before a dead screen: whatever takes long shows that it goes on, by a bar or by dots with a name. And what
 * is kept: the browser is asked to promise it, and its answer is shown.
 */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { choose, fillIn, openApp, patienceMs, start } from "./support/artist";
import { openBrowser, serve } from "./support/place";
import { provedSmall } from "./support/provedSmall";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;

/** Writes down the name of every sign of progress that is ever drawn, however short it stands. */
const watchProgress = () => {
  const seen: string[] = [];
  const signs = "progress, [role=progressbar]";
  const note = (node: Node) => {
    if (!(node instanceof Element)) return;
    const found = [...(node.matches(signs) ? [node] : []), ...node.querySelectorAll(signs)];
    seen.push(...found.map((sign) => sign.getAttribute("aria-label") ?? "without a name"));
  };
  new MutationObserver((changes) => {
    for (const { addedNodes } of changes) addedNodes.forEach(note);
  }).observe(document, { childList: true, subtree: true });
  Object.assign(globalThis, { progressSeen: seen });
};

/** Chromium answers by rules of its own; here it answers as it is told, and it is written down that it was asked. */
const answerForStorage = (isPromised: boolean) => {
  const asked = { times: 0 };
  Object.assign(globalThis, { storageAsked: asked });
  let promised = false;
  navigator.storage.persisted = async () => promised;
  navigator.storage.persist = async () => {
    asked.times += 1;
    promised = isPromised;
    return promised;
  };
};

const progress = () => page.evaluate(() => (globalThis as unknown as { progressSeen: string[] }).progressSeen);
const storageAsked = () =>
  page.evaluate(() => (globalThis as unknown as { storageAsked: { times: number } }).storageAsked.times);
const open = async (hash = "") => {
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, `${place.url}${hash}`);
};

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addInitScript(watchProgress);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

describe("progress is shown", () => {
  it("of the device being prepared", async () => {
    await open();
    await page.getByRole("button", { name: "Prepare this device" }).click();
    await page.getByTestId("device").waitFor({ state: "detached", timeout: 2 * patienceMs });
    expect(await progress()).toContain("Fetching and checking");
  });

  it("of the microphone and the phrase model being opened", async () => {
    await page.getByRole("button", { name: "Try the microphone" }).click();
    await page.getByTestId("ear").getByText("Listening").waitFor();
    expect(await progress()).toContain("Opening microphone and ear");
    await page.getByRole("button", { name: "Stop trying" }).click();
  });

  it("of a protocol's proof", async () => {
    await choose(page, provedSmall);
    expect(await progress()).toContain("Proving it…");
  });

  it("of a search over the records", async () => {
    await page.getByRole("link", { name: "Records", exact: true }).click();
    await page.getByTestId("found").getByText("No session yet").waitFor();
    expect(await progress()).toContain("Looking…");
  });

  it("of a backup being made and taken back", async () => {
    await page.getByRole("link", { name: "Keeping", exact: true }).click();
    const part = (name: string) => page.getByRole("region", { name, exact: true });
    await part("Back up").getByLabel("Passphrase", { exact: true }).fill("nine green bottles");
    const saving = page.waitForEvent("download");
    await page.getByRole("button", { name: "Make a backup" }).click();
    const path = await (await saving).path();
    await page.getByTestId("backed-up").waitFor();
    await page.getByTestId("backup-file").setInputFiles(path);
    await part("Restore").getByLabel("Passphrase", { exact: true }).fill("nine green bottles");
    await page.getByRole("button", { name: "Restore it" }).click();
    await page.getByTestId("restored").getByText("Restored").waitFor();
    expect(await progress()).toEqual(expect.arrayContaining(["Back up", "Restore it"]));
  });
});

describe.each([
  [true, "The browser promised not to clear this away"],
  [false, "The browser has not promised to keep it."],
] as const)("where the browser's promise to keep things is %s", (isPromised, answer) => {
  beforeAll(async () => {
    context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    await context.addInitScript(answerForStorage, isPromised);
  });
  afterAll(() => context.close());

  it("asks for it when a session begins", async () => {
    await open();
    await fillIn(page);
    await start(page);
    expect(await storageAsked()).toBeGreaterThan(0);
    await page.close();
  });

  it("asks again on the page Keeping, and shows the answer", async () => {
    context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    await context.addInitScript(answerForStorage, isPromised);
    await open("#keeping");
    await page.getByTestId("promise").getByText("has not promised").waitFor();
    await page.getByRole("button", { name: "Ask for the promise" }).click();
    await page.getByTestId("promise").getByText(answer).waitFor();
    expect(await storageAsked()).toBe(1);
  });
});
