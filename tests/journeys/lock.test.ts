/** The lock of the records in a real Chromium: sealed sessions are locked away, work goes on, and the passphrase finds them. */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { violationsAtSizes } from "./support/accessible";
import { choose, fillIn, openApp, patienceMs, start } from "./support/artist";
import { press, type } from "./support/keyboard";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { quickSmall, wipes } from "./support/provedSmall";
import { actOnce } from "./support/walker";

const passphrase = "nine green bottles";
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let watched: Watched;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  watched = await watch(context, place.url);
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, place.url);
  await choose(page, quickSmall);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

const go = async (name: string) => {
  await press(page, page.getByRole("link", { name, exact: true }));
  await page.getByRole("heading", { level: 1, name }).waitFor();
};
async function holdSession(client: string, lot: string): Promise<void> {
  await page.getByRole("radio", { name: quickSmall.name.en }).check({ force: true });
  await fillIn(page, { client });
  await page.getByRole("textbox", { name: "Lot" }).fill(lot);
  await start(page);
  await expect.poll(() => actOnce(page, wipes), { timeout: 120_000, interval: 120 }).toBe("closed");
  await page.getByTestId("sealing").getByText("Sealed").waitFor();
  await page.getByRole("button", { name: "Next client" }).click();
  await page.getByRole("button", { name: "Start the session" }).waitFor();
}

/** Everything in every database of this origin, bytes as text. */
const onTheDisk = (): Promise<string> =>
  page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const texts: string[] = [];
    for (const { name } of await indexedDB.databases()) {
      const db = await asked(indexedDB.open(name ?? ""));
      for (const store of db.objectStoreNames)
        texts.push(
          JSON.stringify(await asked(db.transaction(store).objectStore(store).getAll()), (_key, value) =>
            ArrayBuffer.isView(value) ? new TextDecoder("latin1").decode(value as Uint8Array) : value,
          ),
        );
      db.close();
    }
    return [...texts, JSON.stringify({ ...localStorage }), JSON.stringify({ ...sessionStorage })].join("\n");
  });
const look = async (lot: string) => {
  await type(page, page.getByRole("search").getByLabel("Lot", { exact: true }), lot);
};

it("is set on the Keeping page, typed twice, and locks what was sealed before", async () => {
  await holdSession("Client one", "N-204");
  expect(await onTheDisk()).toContain("Client one");
  await go("Keeping");
  const section = page.getByRole("region", { name: "The lock of the records" });
  await type(page, section.getByLabel("Passphrase", { exact: true }), passphrase);
  await type(page, section.getByLabel("The same passphrase again"), "nine green bottle");
  await page.getByText("The two are not the same.").waitFor();
  expect(await section.getByRole("button", { name: "Lock the records" }).isDisabled()).toBe(true);
  await type(page, section.getByLabel("The same passphrase again"), passphrase);
  await press(page, section.getByRole("button", { name: "Lock the records" }));
  await page.getByTestId("lock").getByText("Unlocked until this page is closed").waitFor();
  await section.getByText("Forgotten means lost").waitFor();
  expect(await onTheDisk()).not.toMatch(/Client one|N-204/);
});

it("is open no more after a reload: the record is not shown, and a search says that it is not whole", async () => {
  await page.reload();
  await go("Records");
  await page.getByTestId("vault").getByText("Locked: 1 session.").waitFor();
  await look("N-204");
  await page.getByRole("alert").getByText("This answer is not whole: 1 session").waitFor();
  expect(await page.getByTestId("sessions").getByRole("listitem").count()).toBe(0);
  expect(await page.getByRole("button", { name: "Save as a table (CSV)" }).isDisabled()).toBe(true);
  expect(await page.getByRole("button", { name: "Print the recall list" }).isDisabled()).toBe(true);
});

it("lets a session be held and sealed meanwhile, and takes that one too", async () => {
  await go("Prepare");
  await holdSession("Client two", "N-204");
  await expect.poll(onTheDisk, { timeout: patienceMs }).not.toContain("Client two");
  await go("Records");
  await page.getByTestId("vault").getByText("Locked: 2 sessions.").waitFor();
});

it("opens by keys alone with its passphrase and no other, and then finds by lot", async () => {
  const secret = page.getByLabel("Passphrase", { exact: true });
  await type(page, secret, "nine green bottle");
  await page.keyboard.press("Enter");
  await page.getByTestId("vault").getByText("The passphrase does not open them.").waitFor();
  await type(page, secret, passphrase);
  await page.keyboard.press("Enter");
  await page.getByTestId("vault").getByText("Unlocked until this page is closed").waitFor();
  await look("n204");
  await page.getByTestId("found").getByText("2 sessions").waitFor();
  await page.getByTestId("sessions").getByText("Client one").waitFor();
  await page.getByTestId("sessions").getByText("Client two").waitFor();
});

it.each(["light", "dark"] as const)("is accessible in the %s, on a phone as on a screen", async (colorScheme) => {
  expect(await violationsAtSizes(page, "records-open", colorScheme)).toEqual([]);
  await go("Keeping");
  expect(await violationsAtSizes(page, "keeping-lock", colorScheme)).toEqual([]);
  await go("Records");
});

it("locks again at a tap, and when a session begins", async () => {
  await press(page, page.getByRole("button", { name: "Lock now" }));
  await page.getByTestId("vault").getByText("Locked: 2 sessions.").waitFor();
  await type(page, page.getByLabel("Passphrase", { exact: true }), passphrase);
  await page.keyboard.press("Enter");
  await page.getByTestId("vault").getByText("Unlocked until this page is closed").waitFor();
  await go("Prepare");
  await holdSession("Client three", "N-305");
  await expect.poll(onTheDisk, { timeout: patienceMs }).not.toContain("Client three");
  await go("Records");
  await page.getByTestId("vault").getByText("Locked: 3 sessions.").waitFor();
  expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
});
