/**
 * The ear in a real browser: Chromium's fake microphone plays a recording, the page is served under the app's own strict
 * policy, and what it hears is compared with what the command line hears in the same recording.
 */
import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium, type Page } from "playwright-core";
import { build } from "vite";
import { afterAll, beforeAll, expect, test } from "vitest";
import { staticServer } from "../../bin/staticServer.mjs";
import { type Heard, readWav, writeWav } from "../../src/recogniser";
import { hearWav } from "../../src/recogniser/hearWav";
import { shippedModel } from "../../src/recogniser/network/shippedModel";

const root = fileURLToPath(new URL("../../", import.meta.url));
const recording = join(root, "audio/make/golden/utterance.wav");
let folder = "";
let played = "";
let server: ReturnType<typeof staticServer>;

/** Silence, the recording, silence: the browser may begin to listen a little late. */
async function surrounded(file: string): Promise<Uint8Array> {
  const read = readWav(await readFile(file));
  if (!read.ok) throw new Error(read.message);
  const samples = new Float32Array(read.sound.samples.length + 5 * 16_000);
  samples.set(read.sound.samples, 2 * 16_000);
  return writeWav(samples, 16_000);
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "ear-"));
  played = join(folder, "played.wav");
  await writeFile(played, await surrounded(recording));
  await build({
    configFile: join(root, "src/recogniser/page/vite.config.ts"),
    logLevel: "warn",
    build: { outDir: join(folder, "site"), emptyOutDir: true },
  });
  await cp(join(root, "public/voice"), join(folder, "site/voice"), { recursive: true });
  server = staticServer(join(folder, "site"));
  await new Promise<void>((listening) => server.listen(0, "localhost", listening));
});
afterAll(async () => {
  server.close();
  await rm(folder, { recursive: true });
});

/** Opens the page with the recording as its microphone, listens to the end of it; gives the page's list and complaints. */
async function listenInChromium(query: string) {
  const fake = ["--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream"];
  const browser = await chromium.launch({
    executablePath: "/usr/bin/chromium",
    args: ["--no-sandbox", ...fake, `--use-file-for-fake-audio-capture=${played}%noloop`],
  });
  try {
    const page = await browser.newPage();
    const complaints: string[] = [];
    page.on("console", (message) => complaints.push(`${message.type()}: ${message.text()}`));
    page.on("pageerror", (error) => complaints.push(String(error)));
    const { port } = server.address() as AddressInfo;
    await page.goto(`http://localhost:${port}/${query}`);
    await page.getByRole("button", { name: "Listen" }).click();
    await page.getByText('"opened"').waitFor();
    await page.waitForTimeout(10_000);
    await page.getByRole("button", { name: "Stop" }).click();
    await page.getByText('"finished"').waitFor({ timeout: 60_000 });
    return { entries: await entriesOf(page), complaints };
  } finally {
    await browser.close();
  }
}

async function entriesOf(page: Page): Promise<readonly Record<string, never>[]> {
  const lines = await page.locator("#heard li").allTextContents();
  return lines.map((line) => JSON.parse(line));
}
const heardIn = (entries: readonly Record<string, unknown>[]) =>
  entries
    .flatMap((entry) => ("heard" in entry ? [entry.heard as Heard] : []))
    .filter((heard) => heard.kind === "understood");

test("hears in the browser what the command line hears in the same recording", async () => {
  const loaded = await shippedModel();
  if (!loaded.ok) throw new Error(loaded.message);
  const here = hearWav(await readFile(played), { model: loaded.model });
  const expected = (here.ok ? here.heard : []).filter((heard) => heard.kind === "understood");
  expect(expected.length).toBeGreaterThan(0);
  const { entries, complaints } = await listenInChromium("");
  const inBrowser = heardIn(entries);
  expect(inBrowser.map((heard) => heard.command)).toEqual(expected.map((heard) => heard.command));
  expect(inBrowser.every((heard, n) => Math.abs(heard.confidence - (expected[n]?.confidence ?? 9)) < 0.1)).toBe(true);
  expect(entries.filter((entry) => "error" in entry)).toEqual([]);
  expect(complaints.filter((line) => /Content Security Policy|Refused/i.test(line))).toEqual([]);
});
