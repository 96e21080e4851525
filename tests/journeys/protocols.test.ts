/** The studio edits a procedure with nothing but a keyboard: copied, broken, told so beside the step, mended, worked by. */
import { readFile } from "node:fs/promises";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { protocolDigest } from "../../src/drafting/version";
import { readProtocol } from "../../src/session/readProtocol";
import { smallProtocol } from "../support/smallProtocol";
import { atStep, done, fillIn, openApp, patienceMs, start } from "./support/artist";
import { pick, press, reach, select, type } from "./support/keyboard";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { provedSmall } from "./support/provedSmall";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let watched: Watched;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: "en-US" });
  watched = await watch(context, place.url);
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, `${place.url}#protocols`);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

const button = (name: string | RegExp) => page.getByRole("button", { name, exact: true });
const field = (name: string) => page.getByLabel(name, { exact: true }).filter({ visible: true });
const check = (words: RegExp) => page.getByTestId("check").getByText(words).waitFor();
const proved = () => check(/^Proved: \d+ states, \d+ transitions, 0 breaches\.$/);
/** Prepare lies hidden under the page and says what a file came to as well. */
const seen = (words: string | RegExp) => page.getByText(words).filter({ visible: true }).waitFor();
const stepsOf = (list: string): Promise<(string | null)[]> =>
  page
    .getByTestId(`steps-${list}`)
    .locator("li[data-step]")
    .evaluateAll((rows) => rows.map((row) => row.getAttribute("data-step")));
const version = () => page.getByTestId("version").textContent();
const addFile = (text: string) =>
  page
    .getByTestId("own-protocol-file")
    .setInputFiles({ name: "protocol.json", mimeType: "application/json", buffer: Buffer.from(text) });
const back = async () => {
  await press(page, page.getByRole("link", { name: "All protocols", exact: true }));
  await page.getByTestId("bundled").waitFor();
};

const violations = async (): Promise<string[]> =>
  (await new AxeBuilder({ page }).analyze()).violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} ${target}: ${failureSummary}`),
  );

/** Nothing is wider than the page, and what can be pressed is large enough (WCAG 2.2, 2.5.5: 44 by 44 CSS pixels). */
const cutOff = (): Promise<string[]> =>
  page.evaluate(() => {
    const wide = document.documentElement.scrollWidth > innerWidth ? ["scrolls sideways"] : [];
    const small = [...document.querySelectorAll("main button, main a, main summary, main select, main input")].flatMap(
      (part) => {
        const { width, height } = (part.closest("label") ?? part).getBoundingClientRect();
        const isSmall = width > 0 && (height < 44 || width < 44);
        return isSmall ? [`small: ${part.tagName} ${part.textContent}`] : [];
      },
    );
    return [...wide, ...small];
  });

describe("a bundled protocol", () => {
  it("can be looked at and heard, and not changed", async () => {
    await press(page, page.getByRole("link", { name: "Look at Convention booth without a sink" }));
    await page.getByText(/^It comes with the companion and cannot be changed/).waitFor();
    await proved();
    await press(page, page.getByTestId("steps-setUp").locator("button[aria-expanded]").first());
    expect(await field("Shown, English").isDisabled()).toBe(true);
    expect(await button(/^(Undo|Save as \d|Delete|Move|Add a step)/).count()).toBe(0);
    expect(await button(/^Hear /).count()).toBeGreaterThan(0);
    await back();
  });
});

describe("a copy of a bundled protocol", () => {
  it("opens as a draft that is proved as it stands", async () => {
    await press(page, button("Copy Cartridge machine, single-use grip to edit it"));
    await page.getByRole("heading", { level: 2, name: "Cartridge machine, single-use grip, our own" }).waitFor();
    await proved();
    expect(await version()).toMatch(/^1\.0\.0/);
  });

  it("has its steps put in another order by keys and by buttons, and undo puts them back", async () => {
    const before = await stepsOf("setUp");
    const second = page.getByTestId("steps-setUp").locator("li[data-step]").nth(1).locator("button[aria-expanded]");
    await reach(page, second);
    await page.keyboard.press("Alt+ArrowDown");
    expect((await stepsOf("setUp")).slice(0, 3)).toEqual([before[0], before[2], before[1]]);
    await page.getByTestId("done").getByText("Just now: step moved.").waitFor();
    await page.keyboard.press("Alt+ArrowUp");
    expect(await stepsOf("setUp")).toEqual(before);
    await press(page, button("Move Rings, watch, bracelets off down"));
    expect((await stepsOf("setUp")).slice(0, 2)).toEqual([before[1], before[0]]);
    await press(page, button("Undo: step moved"));
    expect(await stepsOf("setUp")).toEqual(before);
  });

  it("is told beside the step what a deleted hand wash leads to, with the rule, its source and the story", async () => {
    await press(page, button("Delete Wash and dry hands").first());
    await check(/^Not safe: \d+ finding/);
    const atFault = page.getByTestId("steps-setUp").locator('li[data-found="true"]').first();
    await atFault.getByText("Hands are washed or rubbed before gloves go on.").waitFor();
    await atFault.getByText("Source: WHO 2009 hand hygiene; CDC glove use").waitFor();
    await press(page, atFault.getByText("How it comes to that"));
    await atFault.getByText(/^Now it asks: /).waitFor();
    await press(page, button(/^Show the step: /).first());
    expect(await page.evaluate(() => document.activeElement?.id)).toMatch(/^step-/);
  });

  it("can be saved as a draft with what was found, and is not offered to a session", async () => {
    await press(page, button("Save as 1.0.0"));
    await page.getByTestId("done").getByText("Saved as a draft, 1.0.0.").waitFor();
    await press(page, page.getByRole("link", { name: "Prepare", exact: true }).first());
    await page.getByRole("radiogroup", { name: "Protocol" }).waitFor();
    expect(await page.getByRole("radiogroup", { name: "Protocol" }).getByRole("radio").count()).toBe(3);
    await press(page, page.getByRole("link", { name: "Protocols", exact: true }).first());
    await page.getByTestId("drafts").getByText("our own").first().waitFor();
  });

  it("is still there after a reload, finding and all", async () => {
    await page.reload();
    await press(page, page.getByRole("link", { name: "Edit Cartridge machine, single-use grip, our own" }));
    await check(/^Not safe: \d+ finding/);
  });
});

describe("what is found", () => {
  const speak = async (language: string) => {
    await page.goto(`${place.url}#settings`);
    await select(page, page.getByRole("radio", { name: language }));
  };

  it("is told in the language of the device, the protocol's own words too", async () => {
    await speak("Español");
    await page.goto(`${place.url}#protocols`);
    await press(
      page,
      page
        .getByTestId("drafts")
        .getByRole("link", { name: /^Editar / })
        .first(),
    );
    await check(/^No es seguro: \d+ hallazgo/);
    const atFault = page.getByTestId("steps-setUp").locator('li[data-found="true"]').first();
    await atFault.getByText("Las manos se lavan o se frotan antes de ponerse guantes.").waitFor();
    await press(page, atFault.getByText("Cómo se llega a eso"));
    await atFault.getByText(/^Ahora pide: «Ponte guantes/).waitFor();
    await speak("English");
    await page.goto(`${place.url}#protocols`);
    await press(page, page.getByRole("link", { name: "Edit Cartridge machine, single-use grip, our own" }));
    await check(/^Not safe: \d+ finding/);
  });
});

describe("a step", () => {
  it("is added with words and with effects chosen from lists, and the proof goes by them", async () => {
    await press(page, button("Add a step to Set-up"));
    await reach(page, field("Shown, English"));
    await type(page, field("Shown, English"), "Wash the hands again");
    await type(page, field("Spoken, English"), "Wash your hands once more.");
    const added = (await stepsOf("setUp")).at(-1);
    await press(page, button("Add an effect"));
    await pick(page, field("What is done, 1"), "wash hands");
    await page.locator(`li[data-step="${added}"]`).getByText("wash hands").first().waitFor();
    await check(/^Not safe: \d+ finding/);
  });

  it("keeps what it had while a field is left empty, and says why", async () => {
    await type(page, field("Spoken, English"), "");
    await page.getByText("It needs at least one letter. Not taken over.").waitFor();
    expect(await violations()).toEqual([]);
    await press(page, button(/^Undo: /));
    await type(page, field("Hands-on seconds"), "a while");
    await page.getByText("A whole number is needed. Not taken over.").waitFor();
    await type(page, field("Hands-on seconds"), "20");
  });

  it("is heard as a session would say it, and it is said when no clip covers it", async () => {
    const form = page.locator('[data-testid^="form-"]');
    await form.getByText(/^No clip/).waitFor();
    await press(page, button("Hear Rings, watch, bracelets off"));
    await page
      .getByTestId("kept")
      .getByText(/^Says: /)
      .waitFor();
  });

  it("is taken back act by act, to exactly what was saved", async () => {
    const undo = button(/^Undo/);
    while (await undo.isEnabled()) await press(page, undo);
    await check(/^Not safe: \d+ finding/);
    expect(await version()).toMatch(/^1\.0\.0/);
    await back();
  });
});

describe("a proved protocol", () => {
  it("comes from a file, and a file that is none says where and keeps nothing", async () => {
    await addFile(JSON.stringify(provedSmall).replace('"item":"lamp"', '"item":"ghost"'));
    await seen('No item is called "ghost".');
    await seen(/^\$\.\w+\[\d+\]\.effects\[\d+\]\.item$/);
    expect(await page.getByTestId("own-protocols").locator("li").count()).toBe(0);
    await addFile(JSON.stringify(smallProtocol));
    await seen(/^Small is kept as a draft and not offered, since it is not proved/);
    await addFile(JSON.stringify({ ...provedSmall, id: "mine", name: { en: "Mine" } }));
    await seen("Added: Mine.");
    await page.getByTestId("own-protocols").getByText("Proved").waitFor();
  });

  it("gets its next version with a save: the last number for words, the middle one for work", async () => {
    await press(page, page.getByRole("link", { name: "Edit Mine" }));
    await proved();
    const digest = await page.getByTestId("digest").textContent();
    await press(page, page.locator("#step-checkLight"));
    await type(page, field("Shown, English"), "Look at the light");
    await button("Save as 1.0.1").waitFor();
    expect(await page.getByTestId("digest").textContent()).not.toBe(digest);
    await press(page, button("Delete checkFloor"));
    await press(page, button("Save as 1.1.0"));
    await page.getByTestId("own-protocols").getByText("version 1.1.0").waitFor();
    await page.getByTestId("kept").getByText("Kept: Mine 1.1.0, proved.").waitFor();
  });

  it("is handed over as a file that reads back, with the digest that the editor shows", async () => {
    const saving = page.waitForEvent("download");
    await press(page, button("Save Mine as a file"));
    const read = readProtocol(await readFile(await (await saving).path(), "utf8"));
    const protocol = read.ok ? read.protocol : expect.fail(read.trouble.message);
    expect(protocol).toMatchObject({ id: "mine", version: "1.1.0" });
    await press(page, page.getByRole("link", { name: "Edit Mine" }));
    await proved();
    expect(await page.getByTestId("digest").textContent()).toBe(protocolDigest(protocol));
    await back();
  });

  it("is removed without a question, and put back by undo", async () => {
    await press(page, button("Remove Mine"));
    await page.getByTestId("own-protocols").locator("li").waitFor({ state: "detached" });
    await press(page, button("Undo"));
    await page.getByTestId("own-protocols").getByText("Mine").waitFor();
  });

  it("is what a session is worked by", async () => {
    await press(page, page.getByRole("link", { name: "Prepare", exact: true }).first());
    await select(page, page.getByRole("radio", { name: "Mine" }));
    await fillIn(page);
    await start(page);
    await atStep(page, "washHands");
    await done(page);
    await page.getByTestId("now").getByText("Look at the light").waitFor();
  });
});

describe("the pages", () => {
  const openEditor = async () => {
    await openApp(page, `${place.url}#protocols`);
    await press(page, page.getByRole("link", { name: "Edit Small" }));
    await page.getByTestId("findings").waitFor();
    for (const head of ["about", "items", "products", "touched", "breakdown"])
      await press(page, page.locator(`#part-${head}`));
    await press(page, page.getByTestId("items").locator("button[aria-expanded]").first());
    await press(page, page.getByTestId("products").locator("button[aria-expanded]").first());
    await press(page, page.locator("#step-wetChair"));
    await press(page, page.getByText("Where it stands, and its id"));
  };

  it.each(["light", "dark"] as const)("have no accessibility violation, %s", async (colorScheme) => {
    await page.close();
    page = await context.newPage();
    page.setDefaultTimeout(patienceMs);
    await page.addInitScript(() => sessionStorage.clear());
    await page.emulateMedia({ colorScheme });
    await openApp(page, `${place.url}#protocols`);
    await page.getByTestId("bundled").waitFor();
    const list = await violations();
    await openEditor();
    expect([...list, ...(await violations())]).toEqual([]);
  });

  it.each([
    [360, 640],
    [768, 1024],
    [1280, 800],
  ])("fit at %i by %i, with targets of 44 pixels", async (width, height) => {
    await page.setViewportSize({ width, height });
    await openEditor();
    const inEditor = await cutOff();
    const folder = process.env.PICTURES;
    if (folder) await page.screenshot({ path: `${folder}/editor-${width}.png`, fullPage: true });
    await back();
    if (folder) await page.screenshot({ path: `${folder}/list-${width}.png`, fullPage: true });
    expect([...inEditor, ...(await cutOff())]).toEqual([]);
  });

  it("asked nobody but their own origin, and broke no rule of its policy", () => {
    expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
  });
});
