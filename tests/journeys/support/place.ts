/** The built app served on a port of its own, and a real Chromium with a microphone of ours. */
import { execFileSync } from "node:child_process";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { staticServer } from "../../../bin/staticServer.mjs";

const root = fileURLToPath(new URL("../../..", import.meta.url));

const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--autoplay-policy=no-user-gesture-required",
];

export type MicrophoneSetting =
  /** Beeps of the browser's own. */
  | { readonly kind: "beeps" }
  /** Played once from the moment the microphone is opened. */
  | { readonly kind: "recording"; readonly wav: string }
  | { readonly kind: "denied" }
  | { readonly kind: "missing" };

export function microphoneFlags(microphone: MicrophoneSetting): string[] {
  switch (microphone.kind) {
    case "beeps":
      return ["--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream"];
    case "recording":
      return [
        "--use-fake-ui-for-media-stream",
        "--use-fake-device-for-media-stream",
        `--use-file-for-fake-audio-capture=${microphone.wav}%noloop`,
      ];
    case "denied":
      return ["--deny-permission-prompts", "--use-fake-device-for-media-stream"];
    case "missing":
      return ["--use-fake-ui-for-media-stream"];
  }
}

/** @param more flags for one journey, such as a film for the fake camera. */
export const launchOptions = (microphone: MicrophoneSetting, more: readonly string[] = []) => ({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: [...flags, ...microphoneFlags(microphone), ...more],
});

/** The app as `npm start` serves it. Building takes a few seconds; it is done once for each test file. */
export async function serve(): Promise<{ url: string; server: Server; close: () => Promise<void> }> {
  execFileSync(process.execPath, [`${root}bin/serve.mjs`, "--build-only"], { cwd: root, stdio: "ignore" });
  const server = staticServer(`${root}dist`);
  await new Promise<void>((ready) => server.listen(0, "localhost", ready));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://localhost:${port}/`,
    server,
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => closed());
      }),
  };
}

export async function openBrowser(
  microphone: MicrophoneSetting = { kind: "beeps" },
  more: readonly string[] = [],
): Promise<Browser> {
  return chromium.launch(launchOptions(microphone, more));
}

/** What a page may never do, written down as it happens. */
export interface Watched {
  readonly foreign: string[];
  readonly violations: string[];
  readonly errors: string[];
}

/** @param origin the only one that may be asked. */
export async function watch(context: BrowserContext, origin: string): Promise<Watched> {
  const watched: Watched = { foreign: [], violations: [], errors: [] };
  context.on("request", (request) => {
    const { protocol, href } = new URL(request.url());
    if (!href.startsWith(origin) && protocol !== "blob:" && protocol !== "data:") watched.foreign.push(href);
  });
  await context.exposeBinding("tellViolation", (_, text: string) => void watched.violations.push(text));
  await context.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (violation) => {
      const tell = (globalThis as unknown as { tellViolation: (text: string) => void }).tellViolation;
      tell(`${violation.violatedDirective} ${violation.blockedURI} ${violation.sourceFile}:${violation.lineNumber}`);
    });
  });
  const listen = (page: Page) => {
    page.on("pageerror", (error) => watched.errors.push(error.message));
    page.on("console", (message) => {
      if (message.type() === "error") watched.errors.push(message.text());
    });
  };
  for (const page of context.pages()) listen(page);
  context.on("page", listen);
  return watched;
}
