/** The archive in a real Chromium, by keyboard: sessions kept at the station are found by lot, saved as a table, printed. */
import { readFile } from "node:fs/promises";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { passes, recordText, verifyRecord } from "../../src/export";
import { readCsv } from "../../src/export/samples/readCsv";
import { violationsAtSizes } from "./support/accessible";
import { choose, done, fillIn, openApp, patienceMs, start } from "./support/artist";
import { press, type } from "./support/keyboard";
import { diskNow, everyStored } from "./support/onDiskRecords";
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
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, timezoneId: "Europe/Lisbon" });
  watched = await watch(context, place.url);
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

const field = (name: string) => page.getByRole("search").getByLabel(name, { exact: true });
const toRecords = async () => {
  await press(page, page.getByRole("link", { name: "Records", exact: true }));
  await page.getByRole("heading", { level: 1, name: "Records" }).waitFor();
};

/** A session that takes a needle of this lot, left in the middle. */
async function lived(client: string, lot: string): Promise<void> {
  await openApp(page, place.url);
  await choose(page, provedSmall);
  await fillIn(page, { client });
  await page.getByRole("textbox", { name: "Lot" }).fill(lot);
  await start(page);
  await done(page);
  // Another tab begins with the prepare screen.
  await page.close();
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, place.url);
}

it("finds the sessions that used a lot, and no others", async () => {
  await lived("C-014", "N-204");
  await lived("C-015", "N-300");
  await lived("=C-016", "n 204");
  await toRecords();
  await page.getByTestId("found").getByText("3 sessions").waitFor();
  await type(page, field("Lot"), "N-204");
  await page.getByTestId("found").getByText("2 sessions").waitFor();
  const rows = await page.getByTestId("sessions").getByRole("listitem").allInnerTexts();
  expect(rows.map((row) => row.split(" ")[0])).toEqual(["=C-016", "C-014"]);
});

it("hands them out as a table in which a formula is inert", async () => {
  const saving = page.waitForEvent("download");
  await press(page, page.getByRole("button", { name: "Save as a table (CSV)" }));
  const rows = readCsv(await readFile(await (await saving).path(), "utf8"));
  expect(
    rows
      .slice(1)
      .map((row) => row[1])
      .filter(Boolean),
  ).toEqual(["'=C-016", "C-014"]);
});

it("prints a recall list with nothing else on the paper, and room to note who was told", async () => {
  await page.evaluate(() => {
    const printed: string[] = [];
    Object.assign(globalThis, { printed });
    globalThis.print = () => {
      const shown = [...document.body.children].filter((part) => getComputedStyle(part).display !== "none");
      printed.push(shown.map((part) => part.textContent).join("\n"));
    };
  });
  await page.emulateMedia({ media: "print" });
  await press(page, page.getByRole("button", { name: "Print the recall list" }));
  const printed = await page.evaluate(() => (globalThis as unknown as { printed: string[] }).printed[0]);
  await page.emulateMedia({ media: "screen" });
  expect(printed).toMatch(/^Recall list/);
  expect(printed).toContain("Asked for: Lot N-204");
  expect(printed).toContain("C-014");
  expect(printed).not.toContain("C-015");
  expect(printed).toContain("Told on, by");
});

it("says so when there is none, and finds again by client and by day", async () => {
  await type(page, field("Lot"), "X-1");
  await page.getByTestId("found").getByText("No session on this device answers this.").waitFor();
  await press(page, page.getByRole("button", { name: "Ask for everything" }));
  await type(page, field("Client reference"), "c-015");
  await page.getByTestId("found").getByText("1 session").waitFor();
});

it("erases a client's part for good: no search finds it, no store holds it, and the record still verifies", async () => {
  const row = page.getByTestId("sessions").getByRole("listitem").first();
  await press(page, row.getByText("The client’s part"));
  await row.getByText("Reference C-015, kept beside the chain.").waitFor();
  await press(page, row.getByRole("button", { name: "Erase the client’s part" }));
  await row.getByText("This cannot be undone.").waitFor();
  await press(page, row.getByRole("button", { name: "Erase for good" }));
  await page.getByTestId("found").getByText("No session on this device answers this.").waitFor();
  await press(page, page.getByRole("button", { name: "Ask for everything" }));
  await page.getByTestId("found").getByText("3 sessions").waitFor();
  await page.getByTestId("sessions").getByText("(reference erased)").waitFor();

  const { records } = await diskNow(page);
  const erased = records.filter(({ personal }) => personal?.some((part) => "erased" in part));
  const verdicts = await Promise.all(
    erased.map((record) => verifyRecord(recordText(record), { acceptUnfinished: true })),
  );
  expect(verdicts.map((verdict) => [passes(verdict), verdict.personal?.client])).toEqual([[true, "erased"]]);
  expect(await everyStored(page)).toContain("C-014");
  expect(await everyStored(page)).not.toMatch(/c-015/i);
});

it.each(["light", "dark"] as const)("is accessible in the %s, on a phone as on a screen", async (colorScheme) => {
  expect(await violationsAtSizes(page, "records", colorScheme)).toEqual([]);
  expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
});
