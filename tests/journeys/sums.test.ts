/** The studio's screens with nothing but a keyboard, from a mix to the session that uses it and the test that fails. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { atStep, choose, done, fillIn, kindsOf, onDisk, openApp, patienceMs, start } from "./support/artist";
import { pick, press, reach, select, type, typeDate } from "./support/keyboard";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { brokenCsv, heldCsv, studioProtocol } from "./support/studioSession";

let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let watched: Watched;

beforeAll(async () => {
  place = await serve();
  browser = await openBrowser();
  context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    locale: "en-US",
    timezoneId: "Europe/Lisbon",
  });
  watched = await watch(context, place.url);
  page = await newPage();
  await openApp(page, place.url);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
});

/** Printing is left to a twin that writes down what would be on the paper. */
async function newPage(): Promise<Page> {
  const opened = await context.newPage();
  opened.setDefaultTimeout(patienceMs);
  await opened.addInitScript(() => {
    const printed: string[] = [];
    Object.assign(globalThis, { printed });
    globalThis.print = () => {
      const shown = [...document.body.children].filter((part) => getComputedStyle(part).display !== "none");
      const lines = shown.flatMap((part) => [...part.querySelectorAll("p, td")].map((line) => line.textContent));
      printed.push(lines.join("\n"));
    };
  });
  return opened;
}

const field = (name: string | RegExp) => page.getByLabel(name, { exact: true }).filter({ visible: true });
const button = (name: string | RegExp) => page.getByRole("button", { name });
const told = async (id: string): Promise<string> => {
  await page.getByTestId(id).waitFor();
  return (await page.getByTestId(id).allInnerTexts()).join("\n");
};
const kept = (what: string) => page.getByTestId("kept").getByText(`Kept: ${what}`).waitFor();
const open = async (name: string) => {
  const all = button("All pages");
  if (await all.isVisible()) await press(page, all);
  await press(page, page.getByRole("link", { name, exact: true }));
  await page.getByRole("heading", { level: 1, name }).waitFor();
};
const printedOn = async (name: string) => {
  await page.emulateMedia({ media: "print" });
  await press(page, button(name).first());
  await page.emulateMedia({ media: "screen" });
  return page.evaluate(() => (globalThis as unknown as { printed: string[] }).printed.at(-1));
};
/** Opens what a screen hides, so that it is looked at too. */
async function fillScreen(screen: string): Promise<void> {
  if (screen === "Mixing") {
    await type(page, field("Strength of the stock"), "5 %");
    await type(page, field("Strength wanted"), "0.1 %");
    await type(page, field("Bottle"), "1 L");
  }
  if (screen === "Shelf") await press(page, button("Add a product"));
  if (screen === "Steriliser") {
    await type(page, field("Rows of the file"), brokenCsv);
    await page.getByTestId("plot").waitFor();
  }
  if (screen === "Place") await press(page, button(/^Change: /).first());
  // The form behind the page keeps its own details; they are not on the screen.
  const folded = page.locator("main details:not([open]) > summary").filter({ visible: true });
  while ((await folded.count()) > 0) await press(page, folded.first());
}

/** Nothing is wider than the page, and what can be pressed is large enough (WCAG 2.2, 2.5.5: 44 by 44 CSS pixels). */
const cutOff = (at: Page): Promise<string[]> =>
  at.evaluate(() => {
    const wide = document.documentElement.scrollWidth > innerWidth ? ["scrolls sideways"] : [];
    const small = [...document.querySelectorAll("button, nav a, summary, select, input:not([type])")].flatMap(
      (part) => {
        const { width, height } = part.getBoundingClientRect();
        return width > 0 && (height < 44 || width < 44) ? [`small: ${part.textContent}`] : [];
      },
    );
    return [...wide, ...small];
  });

const day = (daysOn: number) => new Date(Date.now() + daysOn * 86_400_000).toISOString().slice(0, 10);

describe("the shelf", () => {
  it("takes a product with the facts of its label, and says what is missing", async () => {
    await open("Shelf");
    await press(page, button("Add a product"));
    await press(page, button("Keep the product"));
    await page.getByText("A disinfectant needs the contact time of its label.").waitFor();
    await type(page, field("Name"), "Bleach stock");
    await type(page, field("Keep wet for, use 1"), "10 min");
    await press(page, button("Keep the product"));
    await kept("Bleach stock");
  });

  it("takes needles and their lot, and warns of one out of date before anything else", async () => {
    await press(page, button("Add a product"));
    await type(page, field("Name"), "Needle 7RL");
    await pick(page, field("Kind"), "Needle");
    await type(page, field("Order when fewer than"), "5");
    await type(page, field("Order up to"), "20");
    await press(page, button("Keep the product"));
    await kept("Needle 7RL");
    for (const [lot, amount, expiry] of [
      ["N-204", "6", day(200)],
      ["N-100", "3", day(-2)],
    ] as const) {
      await press(page, button("Add stock"));
      await pick(page, field("Product"), "Needle");
      await type(page, field("There is now, in pieces"), amount);
      await type(page, field("Lot"), lot);
      await typeDate(page, field("Use by"), expiry);
      await press(page, button("Keep the stock"));
      await page.getByRole("button", { name: `Change Needle 7RL ${lot}` }).waitFor();
    }
    expect(await told("warnings")).toContain("Out of date. Needle 7RL, lot N-100");
  });

  it("takes a removal back", async () => {
    await press(page, button("Remove Needle 7RL N-204"));
    await kept("Needle 7RL removed");
    expect(await told("stock")).not.toContain("N-204");
    await press(page, button("Undo"));
    await button("Remove Needle 7RL N-204").waitFor();
  });
});

describe("mixing", () => {
  it("shows what must never be mixed before there is any mix", async () => {
    await open("Mixing");
    expect(await told("cautions")).toContain("Never mix with acids, ammonia or any other cleaner");
  });

  it("reads amounts as people write them, and asks where a mark could mean a thousand", async () => {
    await pick(page, field("Made from"), "Bleach");
    await type(page, field("Strength of the stock"), "5 percent");
    await type(page, field("Strength wanted"), "1,000 ppm");
    await type(page, field("Bottle"), "1 litre");
    await page.getByText("can be read as a thousand or as one").waitFor();
    await type(page, field("Strength wanted"), "0,1 %");
    await page.getByText("20 millilitres of stock, then water up to 1000 millilitres").waitFor();
  });

  it("refuses a companion and a target above the stock, with the cautions still there", async () => {
    await type(page, field("Anything else in the bottle?"), "vinegar");
    await page.getByTestId("mix").getByText('Not with "vinegar"').waitFor();
    await type(page, field("Anything else in the bottle?"), "");
    await type(page, field("Strength wanted"), "6 %");
    await expect.poll(() => page.getByTestId("mix").locator('[data-tone="no"]').count()).toBe(1);
    expect(await told("cautions")).toContain("Never mix");
    await type(page, field("Strength wanted"), "0,1 %");
  });

  it("prints the label alone, and says it", async () => {
    await type(page, field("Made by"), "AB");
    const paper = await printedOn("Print the label");
    expect(paper).toMatch(/^Bleach stock\n+1000 ppm \(0\.1 %\)\n+Made .* by AB\n+Use before .* \(24 h\)\n+Never mix/);
    expect(paper).not.toContain("What to make");
    await press(page, button("Say the label"));
    await page.getByTestId("kept").getByText("Says: Bleach stock, 1000 parts per million").waitFor();
    await press(page, button("Be quiet"));
  });

  it("puts the mix on the shelf, with its label's time", async () => {
    expect(await field("Keep wet for").inputValue()).toBe("10 min");
    await press(page, button("Put it on the shelf"));
    await kept("Bleach stock on the shelf");
    await open("Shelf");
    expect(await told("mixes")).toContain("Use before");
  });
});

describe("the place and its dates", () => {
  it("shows what is not confirmed, and that it is no legal advice", async () => {
    await open("Place");
    await pick(page, field("Place"), "Texas");
    await kept("place Texas");
    await page.getByText("not legal advice").waitFor();
    await page.getByText(/^\d+ of \d+ lines are not confirmed/).waitFor();
  });

  it("lets the studio put a line otherwise, only with a reason, and keeps what was supplied beside it", async () => {
    await press(page, button("Change: at least 18 years old"));
    await type(page, field("Minimum age, years"), "21");
    await press(page, button("Keep our own"));
    await page.getByText("Say why, or by whose rule.").waitFor();
    await type(page, field("Why, or by whom"), "house rule");
    await press(page, button("Keep our own"));
    await kept("our own line");
    expect(await told("lines")).toMatch(/at least 21 years old\s+house rule, \d{4}\. As supplied: at least 18/);
  });

  it("asks the age of the place, not of the law book", async () => {
    await open("Due dates");
    const year = new Date().getFullYear();
    await typeDate(page, field("Date of birth"), `${year - 19}-01-01`);
    await page.getByTestId("age").getByText("not old enough (21)").waitFor();
  });

  it("lists what is due after an accident, first aid first", async () => {
    await reach(page, field("When it happened"));
    await page.keyboard.type("01312026");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.type("0940AM");
    await page.getByTestId("exposure").getByText("2026-02-03 09:40").waitFor();
    expect(await told("exposure")).toContain("first dose of HIV post-exposure medicine, at the latest");
    await page.getByText("See a clinician now.").waitFor();
  });
});

describe("the steriliser log", () => {
  it("asks for a machine first, and says which tests are due for it", async () => {
    await open("Steriliser");
    await type(page, field("Name of a steriliser"), "Autoclave A");
    await press(page, button("Add a steriliser"));
    await kept("Autoclave A added");
    await page.getByTestId("tests-A1").getByText("never tested").first().waitFor();
    await press(page, button("Bowie-Dick test passed today"));
    await kept("Bowie-Dick test passed today");
  });

  it("does not accept a broken hold, however large its F0, and draws where it broke", async () => {
    const csv = { name: "cycle.csv", mimeType: "text/csv" };
    await field("CSV file").setInputFiles({ ...csv, buffer: Buffer.from(brokenCsv) });
    await page.getByTestId("verdict").getByText("NOT held").waitFor();
    expect(await told("verdict")).toContain("At 4.0 min it fell below the band.");
    await field("CSV file").setInputFiles({ ...csv, buffer: Buffer.from(heldCsv) });
    await page.getByTestId("verdict").getByText("Held 134-137 °C").waitFor();
    expect(await page.getByTestId("plot").getAttribute("aria-label")).toContain("4.0 min unbroken");
    expect(await page.getByTestId("plot").locator("rect").count()).toBe(2);
  });

  it("refuses a load that the class may not carry", async () => {
    await select(page, page.getByRole("radio", { name: "N", exact: true }));
    await page.getByTestId("verdict").getByText("NOT accepted: wrapped solid").waitFor();
    await select(page, page.getByRole("radio", { name: "B", exact: true }));
  });

  it("keeps the cycle, and a pack out of it with its label", async () => {
    await type(page, field("Contents"), "needles");
    await type(page, field("Operator"), "AB");
    await pick(page, field("Biological test"), "biological test awaited");
    await press(page, button("Keep it in the log"));
    await kept("cycle C1 in the log");
    await type(page, field("What is in it"), "needle");
    await type(page, field("Initials"), "AB");
    await type(page, field("Good for months"), "6");
    await press(page, button("Keep the pack"));
    await kept("pack P1");
    await press(page, page.getByText("Label of P1"));
    expect(await printedOn("Print the label")).toMatch(/^needle\n+.*AB\n+Pack P1, cycle C1\n+Good through /);
  });

  it("judges what was read off the display too", async () => {
    await select(page, page.getByRole("radio", { name: "Its display" }));
    await type(page, field("Coolest during the hold, °C"), "134,5");
    await type(page, field("Hottest during the hold, °C"), "136");
    await type(page, field("Held for, minutes"), "2.9");
    await page.getByTestId("verdict").getByText("NOT held").waitFor();
    await type(page, field("Held for, minutes"), "3");
    await page.getByTestId("verdict").getByText("As read by hand.").waitFor();
  });
});

describe("a session that takes from the shelf", () => {
  it("is offered the mix, the lot and the pack, and counts the chair by the mix's own label", async () => {
    await press(page, page.getByRole("link", { name: "Prepare" }));
    await choose(page, studioProtocol);
    await fillIn(page);
    await pick(page, field("From the shelf"), "Bleach stock");
    expect(await page.getByLabel("Name on the label").first().inputValue()).toBe("Bleach stock");
    expect(await page.getByLabel("Keep wet for, min").first().inputValue()).toBe("10");
    await pick(page, field("Lot from the shelf"), "needle, P1");
    expect(await field("Lot").inputValue()).toBe("P1");
    await start(page);
    for (const step of ["washHands", "bottleAway", "putGlovesOn", "openNeedle", "cleanChair", "wetChair1"]) {
      await atStep(page, step);
      await done(page);
    }
    expect(await told("clock-chair")).toMatch(/10|9/);
  });

  it("is not offered that pack again", async () => {
    await page.close();
    page = await newPage();
    await openApp(page, place.url);
    await page.getByRole("radio", { name: "Studio test" }).waitFor();
    await select(page, page.getByRole("radio", { name: "Studio test" }));
    await expect.poll(() => field("Lot").count()).toBe(1);
    expect(await field("Lot from the shelf").count()).toBe(0);
  });

  it("is taken off the shelf, once it is said which product stands behind the item", async () => {
    await open("Shelf");
    await pick(page, field("Protocol"), "Studio test");
    await press(page, page.getByText("Which product stands behind which item"));
    await pick(page, field("needle"), "Needle");
    await kept("what stands behind an item");
    await expect.poll(() => told("stock")).toContain("5 pieces left");
    await page.getByText("Less what 1 session on this device took.").waitFor();
    expect(await told("needs")).toContain("needs 1, 5 may be used, 3 out of date");
    expect(await told("reorder")).toContain("Needle 7RL");
    await press(page, button("Say what is missing"));
    await page.getByTestId("kept").getByText("Says: Nothing is missing. 1 out of date on the shelf.").waitFor();
  });

  it("is listed when the biological test of its pack fails", async () => {
    await open("Steriliser");
    await press(page, button("C1: biological test positive: it failed"));
    await kept("C1, biological test positive");
    const recall = page.getByTestId("recall-C1");
    await recall.getByText("Sessions that used a pack: 1").waitFor();
    const words = await told("recall-C1");
    expect(words).toContain("C-014");
    expect(words).toContain("Packs P1");
    expect(await told("packs")).toContain("under recall");
    await type(page, field("What was done"), "cleaned again");
    await press(page, button("Keep what was done"));
    await kept("cycle C1 in the log");
  });

  it("stays in the archive by the rule of the place, or where there is none", async () => {
    await open("Due dates");
    await page.getByTestId("retention-kept").getByText("Client C-014").waitFor();
    expect(await told("retention-kept")).toContain("keep: no rule known");
    expect(await printedOn("Print the due list")).toMatch(/Client C-014[\s\S]*keep: no rule known/);
  });
});

describe("a mix two days later", () => {
  it("is poured away on the shelf, and refused where the form still remembers it", async () => {
    await page.close();
    page = await newPage();
    await page.clock.setFixedTime(Date.now() + 2 * 86_400_000);
    await openApp(page, `${place.url}#shelf`);
    expect(await told("mixes")).toContain("Pour it away");
    await press(page, page.getByRole("link", { name: "Prepare" }));
    expect(await field("From the shelf").count()).toBe(0);
    await fillIn(page, { client: "C-015" });
    await page.getByText("Use by is out of date").first().waitFor();
    await start(page);
    for (const step of ["washHands", "bottleAway", "putGlovesOn", "openNeedle", "cleanChair"]) {
      await atStep(page, step);
      await done(page);
    }
    await atStep(page, "wetChair1");
    await page.keyboard.press("PageDown");
    await page.getByText("out of date. Use one in date.").first().waitFor();
    const [refused] = (await onDisk(page)).filter(({ facts }) => facts.some((fact) => fact.type === "v1.Refused"));
    expect(refused?.facts).toContainEqual(expect.objectContaining({ request: "apply", reason: "outOfDate" }));
    expect(kindsOf(refused ?? expect.fail("it is on disk"))).not.toContain("WetClockStarted");
  });
});

describe("hands", () => {
  it("are timed, with a count that is spoken and shown", async () => {
    await page.close();
    page = await newPage();
    await openApp(page, `${place.url}#hands`);
    const said = page.getByTestId("hand-said");
    await press(page, button("Wash, 40 seconds"));
    await press(page, button("Stop"));
    await said.getByText("It does not count").waitFor();
    await press(page, button("Rub, 30 seconds"));
    const began = performance.now();
    await said.getByText("10 seconds", { exact: true }).waitFor();
    await page.getByTestId("kept").getByText("Says: Ten").waitFor();
    await said.getByText("20 seconds", { exact: true }).waitFor();
    await said.getByText("Done. Let them dry.").waitFor();
    expect(performance.now() - began).toBeGreaterThanOrEqual(29_500);
    expect(await page.getByTestId("hand-timer").getAttribute("data-state")).toBe("done");
  });
});

describe("all of it", () => {
  const screens = ["Mixing", "Shelf", "Steriliser", "Hands", "Due dates", "Place"] as const;

  it.each(["light", "dark"] as const)("has no accessibility violation, %s", async (colorScheme) => {
    await page.emulateMedia({ colorScheme });
    const found: string[] = [];
    for (const screen of screens) {
      await open(screen);
      await fillScreen(screen);
      const { violations } = await new AxeBuilder({ page }).analyze();
      found.push(...violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${screen}: ${id} ${target}`)));
    }
    expect(found).toEqual([]);
  });

  it.each([
    [360, 640],
    [768, 1024],
    [1280, 800],
  ])("fits at %i by %i, with targets of 44 pixels", async (width, height) => {
    await page.setViewportSize({ width, height });
    const faults: string[] = [];
    for (const screen of screens) {
      await open(screen);
      await fillScreen(screen);
      faults.push(...(await cutOff(page)).map((fault) => `${screen}: ${fault}`));
    }
    expect(faults).toEqual([]);
  });

  it("asked nobody but its own origin, and broke no rule of its policy", () => {
    expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
  });
});
