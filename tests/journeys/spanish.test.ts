/**
 * A Spanish session by Spanish speech: espeak-ng says "estación completado" into the browser's microphone again and again,
 * in a voice that no training has seen. And what a Spanish device keeps: its own model and clips, none of the English ones.
 */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { kindsHeard, openApp, patienceMs, step } from "./support/artist";
import { phrasesOverMachine, writeSound } from "./support/fakeSound";
import { launchOptions, serve, type Watched, watch } from "./support/place";

let folder = "";
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;
let watched: Watched;
const asked: string[] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "spanish-"));
  place = await serve();
  const wav = join(folder, "loop.wav");
  await writeSound(wav, phrasesOverMachine([["station", "done"]], 6, 25, join(folder, "phrases"), "es"));
  const { executablePath, args } = launchOptions({ kind: "beeps" });
  browser = await chromium.launch({ executablePath, args: [...args, `--use-file-for-fake-audio-capture=${wav}`] });
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: "es-MX" });
  watched = await watch(context, place.url);
  context.on("request", (request) => void asked.push(new URL(request.url()).pathname));
  page = await context.newPage();
  await openApp(page, place.url);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
  await rm(folder, { recursive: true });
});

describe("preparing a device for Spanish", () => {
  it("keeps the Spanish model, its negatives and clips, and nothing that is English", async () => {
    await page.getByRole("button", { name: "Preparar este dispositivo" }).click();
    await page.getByTestId("device").waitFor({ state: "detached", timeout: 120_000 });
    const kept = await page.evaluate(async () => {
      const cache = await caches.open("gloveside-pack");
      const base = new URL("./", document.baseURI).pathname;
      return (await cache.keys()).map(({ url }) => new URL(url).pathname.slice(base.length));
    });
    expect(kept).toEqual(
      expect.arrayContaining(["voice/es/model.bin", "voice/es/model.json", "own-voice/es/negatives.bin"]),
    );
    expect(kept.filter((path) => path.startsWith("clips/es.")).length).toBeGreaterThan(2);
    expect(kept.filter((path) => /^(clips\/en|practice|(own-)?voice\/[a-z]+\.)/.test(path))).toEqual([]);
  });
});

describe("a Spanish session", () => {
  it("goes on from step to step by Spanish speech alone", async () => {
    await page.getByRole("textbox", { name: "Referencia del cliente" }).fill("C-3");
    await page.getByRole("textbox", { name: "Artista" }).fill("Artista A");
    await page.getByRole("textbox", { name: "Puesto" }).fill("Puesto 1");
    await page.getByRole("button", { name: "Empezar la sesión" }).click();
    await page.getByTestId("session").waitFor();
    await page.locator('[data-testid="ear"][data-condition="on"]').waitFor({ timeout: patienceMs });
    const seen = [await step(page)];
    for (let n = 0; n < 2; n++) {
      await expect.poll(() => step(page), { timeout: patienceMs }).not.toBe(seen.at(-1));
      seen.push(await step(page));
    }
    expect(await page.getByTestId("ear").textContent()).toContain("Escuchando");
    expect(await kindsHeard(page)).toEqual(expect.arrayContaining(["StepDone", "StepEntered"]));
  });

  it("asked for nothing of the English model, nor of any other origin", () => {
    expect(asked.filter((path) => /\/voice\/model\.|\/clips\/en\./.test(path))).toEqual([]);
    expect([watched.foreign, watched.violations, watched.errors]).toEqual([[], [], []]);
  });
});
