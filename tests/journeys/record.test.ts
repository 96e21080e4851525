/** A record handed over: on paper, as tables, as a page that verifies itself; and judged again on the verify page. */
import { closeSync, ftruncateSync, openSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import { packed } from "../../src/bundle/container";
import { passes, verifyRecord } from "../../src/export";
import { type RecordFile, recordText } from "../../src/export/recordFile";
import { readCsv } from "../../src/export/samples/readCsv";
import { verify } from "../../src/export/verifyCommand";
import { newSigner } from "../../src/log";
import { protocolById } from "../../src/session/protocols";
import { busyDay, hostileInput, sealedRecord } from "../support/papers";
import { inputFor } from "../support/session";
import { smallProtocol } from "../support/smallProtocol";
import { tempFolder } from "../support/tempFolder";
import { choose, done, fillIn, openApp, patienceMs, start } from "./support/artist";
import { press, reach } from "./support/keyboard";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { provedSmall } from "./support/provedSmall";
import { actOnce } from "./support/walker";

const folder = tempFolder("record");
const booth = protocolById("conventionBooth");
/** Which surface a step wipes, so that nothing is wiped before its time. */
const wipes = Object.fromEntries(
  [...(booth?.setUp ?? []), ...(booth?.breakdown ?? [])].flatMap(({ id, effects }) =>
    effects.flatMap((effect) => (effect.verb === "wipe" ? [[id, effect.item]] : [])),
  ),
);

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let watched: Watched;
let text: string;
let record: RecordFile;

beforeAll(async () => {
  await prepareZXingModule({
    overrides: { wasmBinary: wasm() },
    fireImmediately: true,
  });
  place = await serve();
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  watched = await watch(context, place.url);
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, place.url);
  await page.getByRole("radio", { name: /Convention booth/ }).check({ force: true });
  await fillIn(page);
  const fillAll = async (label: string | RegExp, value: string) => {
    const parts = page.getByLabel(label, { exact: true }).filter({ visible: true });
    for (const part of await parts.all()) await part.fill(value);
  };
  await fillAll("Keep wet for, min", "0");
  await fillAll("Keep wet for, s", "2");
  await fillAll(/^Apply again within, (min|s)$/, "");
  await start(page);
  while ((await actOnce(page, wipes)) !== "closed") await page.waitForTimeout(120);
  await page.getByTestId("sealing").getByText("Sealed").waitFor();
  text = await saved("Save the record");
  record = JSON.parse(text);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

const wasm = (): ArrayBuffer => {
  const file = readFileSync(createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm"));
  return new Uint8Array(file).buffer;
};

/** Presses the button and reads the file that comes. */
async function saved(name: string | RegExp, at: Page = page): Promise<string> {
  const [download] = await Promise.all([
    at.waitForEvent("download"),
    at.getByRole("button", { name, exact: typeof name === "string" }).click(),
  ]);
  return readFileSync(await download.path(), "utf8");
}

/** What a person's own reader makes of the code on the paper, looked at as it prints. */
async function codeOnPaper(at: Page): Promise<string> {
  await at.emulateMedia({ media: "print" });
  const picture = await at.getByTestId("record-sheet").locator("figure").screenshot();
  await at.emulateMedia({ media: null });
  const [code] = await readBarcodes(new Uint8Array(picture), { formats: ["QRCode"] });
  return code?.text ?? "";
}

const pagesOf = async (at: Page, format: "A4" | "Letter"): Promise<number> => {
  const pdf = await at.pdf({ format });
  return (pdf.toString("latin1").match(/\/Type\s*\/Page(?!s)/g) ?? []).length;
};

async function violations(at: Page): Promise<string[]> {
  const found = (await new AxeBuilder({ page: at }).analyze()).violations;
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} ${target}: ${failureSummary}`),
  );
}

const verdicts = (at: Page) => at.getByTestId("verdicts");
const passedAt = (at: Page) => verdicts(at).getAttribute("data-passed");
const goodAt = async (at: Page) => {
  await verdicts(at).waitFor();
  return verdicts(at)
    .locator("li")
    .evaluateAll((all) =>
      Object.fromEntries(all.map((one) => [one.getAttribute("data-verdict"), one.hasAttribute("data-good")])),
    );
};

/** Opens a file from the disk in a browser that reaches nobody. */
async function openOffline(
  name: string,
  html: string,
): Promise<{ page: Page; close: () => Promise<void>; seen: Watched }> {
  writeFileSync(join(folder, name), html);
  const alone = await browser.newContext({ offline: true, acceptDownloads: true });
  const seen = await watch(alone, "file://");
  const opened = await alone.newPage();
  opened.setDefaultTimeout(patienceMs);
  await opened.goto(`file://${join(folder, name)}`);
  await opened.locator("[data-testid=verdicts], h1").first().waitFor();
  return { page: opened, close: () => alone.close(), seen };
}

it("is handed over without the client's part where that is asked for, and still passes", async () => {
  expect(text).toContain("C-014");
  const bare = await saved("The record without the client’s part (JSON)");
  expect(bare).not.toContain("C-014");
  const verdict = await verifyRecord(bare);
  expect([passes(verdict), verdict.personal?.client]).toEqual([true, "notIncluded"]);
});

describe("the paper", () => {
  it("carries the head of the chain in a code that another reader reads", async () => {
    expect(await codeOnPaper(page)).toBe(record.closing?.seal.head);
  });

  it.each(["A4", "Letter"] as const)("fits two pages of %s", async (format) => {
    expect(await pagesOf(page, format)).toBeLessThanOrEqual(2);
  });

  it("prints alone: nothing of the screen is on it", async () => {
    await page.emulateMedia({ media: "print" });
    expect(await page.getByRole("button", { name: "Next client" }).isVisible()).toBe(false);
    expect(await page.getByRole("button", { name: "Print" }).isVisible()).toBe(false);
    expect(await page.getByTestId("record-sheet").isVisible()).toBe(true);
    await page.emulateMedia({ media: null });
  });

  it("can be exchanged for the list of deviations by keys", async () => {
    await reach(page, page.getByRole("radio", { name: "Record" }));
    await page.keyboard.press("ArrowRight");
    await page.getByTestId("deviation-sheet").waitFor();
    expect(await pagesOf(page, "A4")).toBeLessThanOrEqual(2);
    await page.keyboard.press("ArrowLeft");
    await page.getByTestId("record-sheet").waitFor();
  });

  it("has no accessibility violation, in light and dark", async () => {
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await violations(page)).toEqual([]);
    }
    await page.emulateMedia({ colorScheme: "light" });
  });
});

describe("the tables", () => {
  it("hold one row a surface", async () => {
    const [head, ...rows] = readCsv(await saved("Contact times as a table (CSV)"));
    expect(head).toContain("watchedSec");
    const surfaces = record.closing?.summary.wetClocks.map(({ surface }) => surface);
    expect(rows).toHaveLength(new Set(surfaces).size);
  });

  it("hold one row a fact", async () => {
    expect(readCsv(await saved("Facts as a table (CSV)"))).toHaveLength(record.entries.length + 1);
  });
});

describe("the page that verifies itself", () => {
  let html: string;
  beforeAll(async () => {
    html = await saved("Page that verifies itself (HTML)");
  });

  it("passes offline from the disk, and gives back the very record", async () => {
    const { page: alone, close, seen } = await openOffline("good.html", html);
    expect(await goodAt(alone)).toEqual({ intact: true, signed: true, follows: true });
    expect(await saved("Save the record (JSON)", alone)).toBe(text);
    expect(await violations(alone)).toEqual([]);
    expect(await codeOnPaper(alone)).toBe(record.closing?.seal.head);
    expect(seen).toEqual({ foreign: [], violations: [], errors: [] });
    await close();
  });

  it("says so when its record was altered", async () => {
    const template = html.replace(/(id="gloveside-record">)[^<]*/, "$1");
    const altered = text.replace('"Artist A"', '"Artist B"');
    const { page: alone, close } = await openOffline(
      "altered.html",
      template.replace('id="gloveside-record">', `id="gloveside-record">${Buffer.from(altered).toString("base64")}`),
    );
    expect(await goodAt(alone)).toMatchObject({ intact: false });
    await verdicts(alone).getByText("The header was altered.").waitFor();
    await close();
  });

  it("says that it did not check when its program was altered", async () => {
    const { page: alone, close } = await openOffline(
      "program.html",
      html.replace(/<script type="module">/, '<script type="module">globalThis.x=1;'),
    );
    await alone.getByRole("heading", { name: "Not checked" }).waitFor();
    await alone.waitForTimeout(1_000);
    expect(await verdicts(alone).count()).toBe(0);
    await close();
  });

  it("keeps HTML in every text field inert", async () => {
    const hostile = await sealedRecord(hostileInput());
    const template = html.replace(
      /<script type="text\/plain" id="gloveside-record">[^<]*<\/script>/,
      "<!--the record goes here-->",
    );
    const { page: alone, close, seen } = await openOffline("hostile.html", packed(template, hostile.text) ?? "");
    expect(await goodAt(alone)).toMatchObject({ intact: true, follows: true });
    await alone.getByRole("radio", { name: "Deviations" }).check({ force: true });
    expect(await alone.locator("img, iframe").count()).toBe(0);
    expect(await alone.evaluate(() => "hurt" in globalThis)).toBe(false);
    expect(seen).toEqual({ foreign: [], violations: [], errors: [] });
    await close();
  });
});

describe("the verify page", () => {
  let other: Page;
  let foreign: string;
  beforeAll(async () => {
    foreign = (await sealedRecord(inputFor(smallProtocol), { atWork: [] }, await newSigner())).text;
    other = await context.newPage();
    other.setDefaultTimeout(patienceMs);
    await other.goto(`${place.url}#verify`);
    await other.getByRole("heading", { level: 1, name: "Verify" }).waitFor();
  });

  const give = async (name: string, content: string | Buffer) => {
    await other
      .getByTestId("record-file")
      .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(content) });
    await other.getByTestId("checked").getByText(name).waitFor();
  };

  it("passes this device's own record", async () => {
    await give("own.json", text);
    expect(await goodAt(other)).toEqual({ intact: true, signed: true, follows: true });
    expect(await passedAt(other)).toBe("true");
  });

  it("takes a file that is dropped on it", async () => {
    const data = await other.evaluateHandle((json) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([json], "dropped.json", { type: "application/json" }));
      return transfer;
    }, text);
    await other.getByText("Drop a record here").dispatchEvent("drop", { dataTransfer: data });
    await other.getByTestId("checked").getByText("dropped.json").waitFor();
    expect(await passedAt(other)).toBe("true");
  });

  it("tells the three verdicts apart, with the fact, what was expected and what is there", async () => {
    await give("altered.json", text.replace('"known":"said"', '"known":"measured"'));
    expect(await goodAt(other)).toMatchObject({ intact: false, follows: false });
    await give("signed-again.json", readFileSync(new URL("../vectors/v1-signed-again.json", import.meta.url)));
    expect(await goodAt(other)).toEqual({ intact: true, signed: false, follows: false });
    const follows = verdicts(other).locator('[data-verdict="follows"]');
    expect(await follows.textContent()).toMatch(/At fact 75[\s\S]*180000[\s\S]*240000/);
  });

  it("passes another device's record once its key is trusted, by keys alone, and not before", async () => {
    await give("foreign.json", foreign);
    expect(await goodAt(other)).toEqual({ intact: true, signed: false, follows: true });
    await reach(other, other.getByLabel("Whose device"));
    await other.keyboard.type("Second tablet");
    await press(other, other.getByRole("button", { name: "Trust this key" }));
    await other.locator('[data-testid="verdicts"][data-passed="true"]').waitFor();
    await other.reload();
    await other.getByTestId("trusted").getByText("Second tablet").first().waitFor();
    await give("foreign.json", foreign);
    expect(await passedAt(other)).toBe("true");
    await verdicts(other).getByText("on the studio’s list: Second tablet").waitFor();
    const list = join(folder, "trusted.json");
    writeFileSync(list, await saved("Save the list", other));
    writeFileSync(join(folder, "foreign.json"), foreign);
    const said: string[] = [];
    expect(await verify([join(folder, "foreign.json"), "--trusted", list], (line) => said.push(line))).toBe(0);
    expect(said.join("")).toContain("a trusted key: Second tablet");
    // The list is of the whole studio: this device's own records pass by it, too.
    writeFileSync(join(folder, "own.json"), text);
    expect(await verify([join(folder, "own.json"), "--trusted", list], (line) => said.push(line))).toBe(0);
    expect(said.join("")).toMatch(/a trusted key: Device [0-9a-f]{4}/);
    await press(other, other.getByRole("button", { name: "Stop trusting Second tablet" }));
    await other.locator('[data-testid="verdicts"][data-passed="false"]').waitFor();
  });

  it("takes in the list of another device once its keys were looked at, and no other file", async () => {
    const field = other.getByTestId("trusted-file");
    await field.setInputFiles({ name: "no.json", mimeType: "application/json", buffer: Buffer.from('{"keys":[]}') });
    await other.getByRole("alert").getByText("This is not a list of trusted keys.").waitFor();
    await field.setInputFiles(join(folder, "trusted.json"));
    const offered = other.getByTestId("offered-keys").getByRole("listitem");
    await offered.first().waitFor();
    expect(await offered.allInnerTexts()).toEqual([expect.stringMatching(/^Second tablet\s+([0-9a-f]{4} ?){16}$/)]);
    expect(await other.getByTestId("trusted").getByRole("listitem").count()).toBe(0);
    await press(other, other.getByRole("button", { name: "Trust the key of the list" }));
    await other.locator('[data-testid="verdicts"][data-passed="true"]').waitFor();
    await field.setInputFiles(join(folder, "trusted.json"));
    await other.getByRole("alert").getByText("Every key on that list is here already.").waitFor();
    await press(other, other.getByRole("button", { name: "Stop trusting Second tablet" }));
    await other.locator('[data-testid="verdicts"][data-passed="false"]').waitFor();
  });

  it("refuses a newer format politely", async () => {
    await give("newer.json", text.replace('"formatVersion":2,"input"', '"formatVersion":3,"input"'));
    await verdicts(other).getByText("A newer version of the app made this record.").waitFor();
  });

  it.each([
    ["words.json", "Dear inspector", "it is no longer JSON"],
    ["empty.json", "", "it is no longer JSON"],
    ["deep.json", "[".repeat(200_000), "it is no longer JSON"],
    ["list.json", "[null]", "This is not a record"],
    ["key.json", '{"__proto__":{"ok":true},"constructor":{"prototype":{"ok":true}}}', "This is not a record"],
  ])("refuses the hostile file %s in words, and reaches no prototype", async (name, content, words) => {
    await give(name, content);
    await verdicts(other).getByText(words).waitFor();
    expect(await passedAt(other)).toBe("false");
    expect(await other.evaluate(() => "ok" in {})).toBe(false);
  });

  it("takes the record out of a page that carries it", async () => {
    const template = readFileSync(new URL("../../dist/record-page.html", import.meta.url), "utf8");
    await give("page.html", packed(template, text) ?? "");
    expect(await passedAt(other)).toBe("true");
    await give("empty.html", "<!doctype html><title>nothing</title>");
    await other.getByText("This page holds no record.").waitFor();
  });

  it("refuses 200 MB without reading them, and goes on", async () => {
    const path = join(folder, "large.json");
    const file = openSync(path, "w");
    ftruncateSync(file, 200_000_000);
    closeSync(file);
    await other.getByTestId("record-file").setInputFiles(path);
    await other.getByRole("alert").getByText("larger than any record").waitFor();
    await give("own.json", text);
    expect(await passedAt(other)).toBe("true");
  });

  it("never lets a file that was given before answer for the one given last, however long its check takes", async () => {
    await give("slow.json", foreign);
    await other.evaluate(() => {
      const read = File.prototype.arrayBuffer;
      File.prototype.arrayBuffer = async function () {
        if (this.name === "slow.json") await new Promise((done) => setTimeout(done, 1500));
        return read.call(this);
      };
    });
    // A key on the list has it judged again, and meanwhile another file is given.
    await other.getByLabel("Whose device").fill("another station");
    await other.getByLabel("Fingerprint", { exact: true }).fill("0011".repeat(16));
    await other.getByRole("button", { name: "Trust this key" }).click();
    await other.getByTestId("trusted").getByText("another station").first().waitFor();
    await give("altered.json", text.replace('"artist":"', '"artist":"nobody, '));
    await other.waitForTimeout(3000);
    expect(await other.getByTestId("checked").textContent()).toContain("altered.json");
    expect(await passedAt(other)).toBe("false");
    await other.reload();
    await other.getByRole("heading", { level: 1, name: "Verify" }).waitFor();
  });

  it("prints the longest day on two pages, the difference first and never balanced", async () => {
    const { input, day } = busyDay();
    const busy = await sealedRecord(input, day);
    await give("busy.json", busy.text);
    const sheet = other.getByTestId("record-sheet");
    await sheet.waitFor();
    expect(await pagesOf(other, "A4")).toBe(2);
    expect(await pagesOf(other, "Letter")).toBe(2);
    const whole = (await sheet.textContent()) ?? "";
    expect(whole.indexOf("SHARPS DO NOT BALANCE")).toBeGreaterThan(0);
    expect(whole.indexOf("SHARPS DO NOT BALANCE")).toBeLessThan(whole.indexOf("What departed"));
    expect(await sheet.getByText("Sharps balance").count()).toBe(0);
    expect(await codeOnPaper(other)).toBe(busy.record.closing?.seal.head);
  });

  it("has no accessibility violation, and fits the sizes that it is held in", async () => {
    for (const [width, height] of [
      [360, 640],
      [768, 1024],
      [1280, 800],
    ] as const) {
      await other.setViewportSize({ width, height });
      for (const colorScheme of ["light", "dark"] as const) {
        await other.emulateMedia({ colorScheme });
        expect(await violations(other)).toEqual([]);
      }
      expect(await other.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      if (process.env.PICTURES)
        await other.screenshot({ path: join(process.env.PICTURES, `verify-${width}.png`), fullPage: true });
    }
  });
});

describe("the artist's report of an accident", () => {
  let own: Page;
  beforeAll(async () => {
    own = await context.newPage();
    own.setDefaultTimeout(patienceMs);
    await own.goto(`${place.url}#accident`);
    await own.getByRole("heading", { level: 1, name: "Accident report" }).waitFor();
  });
  const said = (text: string) => own.getByTestId("report-said").getByText(text).waitFor();
  const json = (content: string) => ({ name: "file.json", mimeType: "application/json", buffer: Buffer.from(content) });

  it("is filled in from the facts, with the clinician first and the due times with their sources", async () => {
    const lots = [{ item: "needle", lot: "N-204", expiry: null, known: "typed" as const }];
    const accident = await sealedRecord(inputFor(smallProtocol, { lots }), {
      at: { 20: { type: "exposure.reported" } },
    });
    await own.getByTestId("fill-report").setInputFiles(json(accident.text));
    await said("Filled in from the record");
    const sheet = (await own.getByTestId("accident-sheet").textContent()) ?? "";
    expect(sheet.indexOf("See a clinician now.")).toBeLessThan(sheet.indexOf("N-204"));
    // 72 hours after 2026-11-25: CDC nPEP, MMWR 74(RR-1), 2025 (FACTS 6.06).
    expect(sheet).toMatch(/2026-11-28 09:\d\d {2}first dose of HIV post-exposure medicine, at the latest.*2025/);
    expect(await pagesOf(own, "A4")).toBeLessThanOrEqual(2);
  });

  it("is reached from the close of the session, and filled in from its facts", async () => {
    const after = await context.newPage();
    after.setDefaultTimeout(patienceMs);
    await openApp(after, place.url);
    await choose(after, provedSmall);
    await fillIn(after);
    await start(after);
    for (let steps = 0; steps < 3; steps++) await done(after);
    await after.keyboard.press("F9");
    await after.getByRole("heading", { name: "First aid first" }).waitFor();
    await after.keyboard.press("y");
    await after.getByRole("region", { name: "End the session here?" }).waitFor();
    await after.keyboard.press("c");
    await after.getByTestId("now").and(after.locator('[data-kind="steps"]')).waitFor();
    await after.keyboard.press("q");
    await after.getByRole("region", { name: "Close and seal?" }).waitFor();
    await after.keyboard.press("c");
    await after.getByTestId("sealing").getByText("Sealed").waitFor();
    await press(after, after.getByRole("button", { name: "Fill in the accident report" }));
    await after.getByRole("heading", { level: 1, name: "Accident report" }).waitFor();
    await after.getByTestId("report-said").getByText("Filled in from the record").waitFor();
    expect(await after.getByLabel("Who", { exact: true }).inputValue()).toBe("Artist A");
    expect(await after.getByLabel("During", { exact: true }).inputValue()).toBe("Set-up");
    await after.reload();
    expect(await after.getByLabel("Who", { exact: true }).inputValue()).toBe("");
    await after.close();
  });

  it("is locked, opens with its passphrase alone, and leaves nothing on the device", async () => {
    await own.getByLabel("How it happened").fill("Cartridge slipped.");
    await own.getByLabel("Passphrase, eight").fill("nine green bottles");
    await own.getByLabel("The passphrase again").fill("nine green bottles");
    const locked = await saved("Save it locked", own);
    expect(locked).not.toContain("slipped");
    await own.reload();
    expect(await own.getByLabel("How it happened").inputValue()).toBe("");
    await own.getByLabel("Passphrase, eight").fill("another passphrase");
    await own.getByTestId("open-report").setInputFiles(json(locked));
    await said("does not open it");
    await own.getByLabel("Passphrase, eight").fill("nine green bottles");
    await own.getByTestId("open-report").setInputFiles(json(locked));
    await said("Opened.");
    expect(await own.getByLabel("How it happened").inputValue()).toBe("Cartridge slipped.");
  });

  it("has no accessibility violation in light and dark", async () => {
    for (const colorScheme of ["light", "dark"] as const) {
      await own.emulateMedia({ colorScheme });
      expect(await violations(own)).toEqual([]);
    }
    if (process.env.PICTURES)
      await own.screenshot({ path: join(process.env.PICTURES, "accident.png"), fullPage: true });
  });
});

it("asked nobody outside its origin, kept to its policy and met no error", async () => {
  expect(await verifyRecord(recordText(record))).toMatchObject({ intact: { ok: true } });
  expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
});
