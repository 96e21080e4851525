/** The clips as a real browser decodes them, and the speaker as it really sounds. No clip is silence, none leaks. */
import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { build } from "esbuild";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ClipManifest, durationMs } from "../../src/announcements/clips";
import { en } from "../../src/announcements/en";
import { sayTimeUp } from "../../src/announcements/sayClock";
import type { ClipLevel } from "../support/speakingPage";

const manifest = ClipManifest.parse(JSON.parse(readFileSync("public/clips/en.json", "utf8")));
const timeUp = sayTimeUp(en, [{ id: "chair", calledAs: { en: "chair" } }]);

let server: Server;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  const { outputFiles } = await build({
    entryPoints: ["tests/support/speakingPage.ts"],
    bundle: true,
    format: "iife",
    write: false,
  });
  const script = outputFiles[0]?.text ?? "";
  server = createServer(({ url = "/" }, response) => {
    if (url === "/")
      response.setHeader("content-type", "text/html").end("<!doctype html><script src=page.js></script>");
    else if (url === "/page.js") response.setHeader("content-type", "text/javascript").end(script);
    else if (/^\/(clips|cues)\/[\w.-]+$/.test(url)) response.end(readFileSync(`public${url}`));
    else response.writeHead(404).end();
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  const port = typeof address === "object" && address ? address.port : 0;
  browser = await chromium.launch({
    executablePath: "/usr/bin/chromium",
    args: ["--autoplay-policy=no-user-gesture-required"],
  });
  page = await browser.newPage();
  await page.goto(`http://127.0.0.1:${port}/`);
});

afterAll(async () => {
  await browser.close();
  server.close();
});

describe("the companion's voice in a real browser", () => {
  it("has sound in every clip, and silence beside each", async () => {
    const levels: readonly ClipLevel[] = await page.evaluate(
      (m) => (globalThis as never as { clipLevels: (m: unknown) => Promise<ClipLevel[]> }).clipLevels(m),
      manifest,
    );
    expect(levels.length).toBe(Object.keys(manifest.clips).length);
    expect(levels.filter(({ insideDb }) => insideDb < -26)).toEqual([]);
    expect(levels.filter(({ besideDb }) => besideDb > -45)).toEqual([]);
  });

  it("sounds for as long as the clips last, at the clips' own rate", async () => {
    type Heard = { end: string; failed: string[]; heardMs: number; tookMs: number; rateHz: number };
    const heard: Heard = await page.evaluate(
      ([m, parts]) => (globalThis as never as { speak: (m: unknown, p: unknown) => Promise<Heard> }).speak(m, parts),
      [manifest, timeUp.parts] as const,
    );
    expect(heard).toMatchObject({ end: "ended", failed: [], rateHz: 16_000 });
    expect(heard.heardMs).toBeGreaterThan(0.6 * durationMs(timeUp, manifest));
    expect(heard.tookMs).toBeGreaterThan(durationMs(timeUp, manifest));
  });
});
