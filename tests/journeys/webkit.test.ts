/**
 * Debian's WebKit, the engine's own small browser: the app opens, a session begins and goes on by keys, comes back after a
 * reload, and does so again with the server gone. It is not an iPad: no installed app, no touch, no iOS storage rules.
 */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serve } from "./support/place";
import { missingForWebkit, openWebkit, type WebkitPage } from "./support/webkit";

/** As WebDriver codes it (W3C WebDriver, section "Keyboard actions"). */
const pageDown = "\uE00F";

let place: Awaited<ReturnType<typeof serve>>;
let page: WebkitPage;

const step = () =>
  page.run<string | null>(`return document.querySelector('[data-testid="now"]')?.dataset.step ?? null`);
const field = (label: string) =>
  page.run<string>(
    `const label = [...document.querySelectorAll("label")].find((one) => one.textContent.startsWith(arguments[0]));
     const field = label.control ?? label.querySelector("input");
     field.id ||= "f" + arguments[0].length;
     return "#" + CSS.escape(field.id)`,
    label,
  );

async function begin(client: string): Promise<void> {
  await page.until(`return [...document.querySelectorAll("form button[type=submit]")].some((one) => !one.disabled)`);
  for (const [label, text] of [
    ["Client reference", client],
    ["Artist", "Artist A"],
    ["Station", "Station 1"],
  ] as const) {
    const at = await field(label);
    await page.run(`document.querySelector(arguments[0]).select()`, at);
    await page.type(at, text);
  }
  await page.click("form button[type=submit]");
  await page.until(`return document.querySelector('[data-testid="session"]') !== null`);
}

async function goOn(): Promise<void> {
  const before = await step();
  await page.press(pageDown);
  await page.until(
    `const now = document.querySelector('[data-testid="now"]'); return now && now.dataset.step !== arguments[0]`,
    before,
  );
}

describe.skipIf(missingForWebkit)(`in WebKit${missingForWebkit ? ` (${missingForWebkit})` : ""}`, () => {
  beforeAll(async () => {
    place = await serve();
    page = await openWebkit();
  });
  afterAll(async () => {
    await page?.close();
    await place?.close().catch(() => undefined);
  });

  it("a session begins and goes on by key", async () => {
    await page.goto(place.url);
    await begin("C-1");
    await goOn();
    await goOn();
    expect(await step()).not.toBeNull();
  });

  it("the session comes back by itself after a reload, nothing lost", async () => {
    const before = await step();
    await page.goto(place.url);
    await page.until(`return document.querySelector('[data-testid="session"]') !== null`);
    expect(await step()).toBe(before);
  });

  it("the device is prepared, and the server may go", async () => {
    await page.run(`sessionStorage.clear(); location.hash = "settings"; location.reload()`);
    const prepared = `[...document.querySelectorAll('[data-testid="device"]')].some((one) => one.dataset.at === "ready")`;
    await page.until(`return document.querySelector('[data-testid="device"][data-at="bare"] button') !== null`);
    await page.run(
      `[...document.querySelectorAll('[data-testid="device"] button')].find((one) => one.checkVisibility()).click()`,
    );
    await page.until(`return ${prepared}`);
    await page.until(`return navigator.serviceWorker.controller !== null`);
    await place.close();
    await page.run("location.reload()");
    await page.until(`return ${prepared}`);
  });

  it("without the server a session is begun and worked in", async () => {
    await page.run(`location.hash = "prepare"`);
    await begin("C-2");
    await goOn();
    expect(await page.run(`return document.querySelector('[data-testid="says"]').textContent`)).not.toBe("");
  });
});
