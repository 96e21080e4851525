/**
 * Teach it your voice, in a real browser with real sound: the microphone gives, again and again, something that is in no
 * language; after one lesson it is a command, after "undo" it is nothing again.
 */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { phrase, rateHz } from "../../audio/make/rehearsal/artistVoice";
import { openApp, patienceMs } from "./support/artist";
import { writeSound } from "./support/fakeSound";
import { launchOptions, serve, watch } from "./support/place";

let folder = "";
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;
let watched: Awaited<ReturnType<typeof watch>>;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "teaching-"));
  place = await serve();
  const strange = phrase("station", "dropped", join(folder, "phrases")).toReversed();
  const loop = new Float32Array(5 * rateHz).map((_, n) => 0.0004 * Math.sin(n * n));
  for (const [n, x] of strange.entries()) loop[rateHz + n] = (loop[rateHz + n] as number) + x;
  const wav = join(folder, "strange.wav");
  await writeSound(wav, loop);
  const { executablePath, args } = launchOptions({ kind: "beeps" });
  browser = await chromium.launch({ executablePath, args: [...args, `--use-file-for-fake-audio-capture=${wav}`] });
  const context = await browser.newContext({ viewport: { width: 768, height: 1024 } });
  watched = await watch(context, place.url);
  page = await context.newPage();
  await openApp(page, `${place.url}#voice`);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
  await rm(folder, { recursive: true });
});

const heard = async (): Promise<string> => {
  await page.goto(`${place.url}#prepare`);
  await page.getByRole("button", { name: "Try the microphone" }).click();
  await page.getByText("Listening").first().waitFor({ timeout: patienceMs });
  await page.waitForTimeout(9000);
  const said = (await page.locator('[data-testid="ear"] ~ p').allTextContents()).join(" ");
  await page.getByRole("button", { name: "Stop trying" }).click();
  return said;
};

/** The loop does not wait to be asked: a lesson whose takes all began in the middle of it is begun again. */
async function learnt(): Promise<void> {
  const done = page.getByTestId("taught").getByText("Words of your own for: extra colour.");
  const nothing = page.getByText("No take was good enough.");
  for (let lesson = 0; lesson < 3; lesson++) {
    await done.or(nothing).first().waitFor({ timeout: 150_000 });
    if (await done.isVisible()) return;
    await page.getByRole("button", { name: "Begin" }).click();
    await page.getByTestId("lesson").waitFor({ timeout: patienceMs });
  }
  throw new Error("three lessons, and nothing was learnt");
}

it("learns nothing before it was agreed to", async () => {
  const begin = page.getByRole("button", { name: "Begin" });
  expect(await begin.isDisabled()).toBe(true);
  const { violations } = await new AxeBuilder({ page })
    .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"])
    .analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await page.getByRole("checkbox", { name: /I agree/ }).check({ force: true });
  expect(await begin.isDisabled()).toBe(false);
});

it("asks for the phrase, takes it three times, and hears it from then on, also after a reload", async () => {
  await page.getByRole("radio", { name: "Words of my own" }).check({ force: true });
  await page.getByRole("combobox", { name: "For" }).selectOption("moreInk");
  await page.getByRole("button", { name: "Begin" }).click();
  await page.getByTestId("say-now").getByText("station extra colour").waitFor({ timeout: patienceMs });
  const { violations } = await new AxeBuilder({ page })
    .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"])
    .analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await learnt();
  await page.reload();
  await page
    .getByTestId("taught")
    .getByText(/[23] takes on/)
    .waitFor({ timeout: patienceMs });
  expect(await heard()).toContain("extra colour");
});

it("hands it over as a file, and forgets it when the lesson is undone", async () => {
  await page.goto(`${place.url}#voice`);
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save as a file" }).click(),
  ]);
  expect(file.suggestedFilename()).toBe("gloveside-own-voice.json");
  await page.getByRole("button", { name: "Undo the last lesson" }).click();
  await page.getByTestId("taught").getByText("Nothing yet.").waitFor({ timeout: patienceMs });
  expect(await heard()).not.toContain("extra colour");
  expect([watched.foreign, watched.violations, watched.errors]).toEqual([[], [], []]);
});
