/**
 * Memory over a working day: a session of eight hours lived at sixty times its speed, with gloves changed every five
 * minutes. The page's clocks and timers run faster; voice, disk and screen are as they are. There is no microphone: its
 * sound cannot be hurried, and at sixty times the speed it would count as lost.
 */
import { readFileSync } from "node:fs";
import type { Browser, CDPSession, Page } from "playwright-core";
import { patienceMs } from "../../journeys/support/artist";
import { openBrowser } from "../../journeys/support/place";
import { bearNames, begin } from "./begin";
import { mb, print, type Row } from "./table";
import { act, isAtWork, walkTo } from "./walkTo";

const speed = 60;
const eventEveryMin = 5;

/** Clocks, intervals and timeouts of the page run `times` as fast; what the browser does by itself does not. */
const hurry = (times: number) => {
  const now = performance.now.bind(performance);
  const startMs = Date.now();
  performance.now = () => now() * times;
  Date.now = () => startMs + now() * times;
  const { setInterval: every, setTimeout: after } = globalThis;
  const faster = (ms: number | undefined) => (ms ?? 0) / times;
  globalThis.setInterval = ((act: () => void, ms?: number) => every(act, faster(ms))) as typeof setInterval;
  globalThis.setTimeout = ((act: () => void, ms?: number, ...more: []) =>
    after(act, faster(ms), ...more)) as typeof setTimeout;
};

interface Held {
  readonly heapBytes: number;
  readonly nodes: number;
  readonly listeners: number;
  readonly residentBytes: number;
  readonly facts: number;
}

async function held(page: Page, cdp: CDPSession, pid: number | null): Promise<Held> {
  await cdp.send("HeapProfiler.collectGarbage");
  await cdp.send("HeapProfiler.collectGarbage");
  const { metrics } = await cdp.send("Performance.getMetrics");
  const metric = (name: string) => metrics.find((one) => one.name === name)?.value ?? Number.NaN;
  const status = pid === null ? "" : readFileSync(`/proc/${pid}/status`, "utf8");
  return {
    heapBytes: metric("JSHeapUsedSize"),
    nodes: metric("Nodes"),
    listeners: metric("JSEventListeners"),
    residentBytes: 1024 * Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? Number.NaN),
    facts: Number(await page.getByTestId("session").getAttribute("data-facts")),
  };
}

/** The process that draws the page: the one of its kind that has worked most. */
async function rendererOf(browser: Browser): Promise<number | null> {
  const cdp = await browser.newBrowserCDPSession();
  const { processInfo } = await cdp.send("SystemInfo.getProcessInfo");
  const renderers = processInfo.filter(({ type }) => type === "renderer").toSorted((a, b) => b.cpuTime - a.cpuTime);
  await cdp.detach();
  return renderers[0]?.id ?? null;
}

export async function measureMemory(url: string, hours: number): Promise<void> {
  const browser = await openBrowser({ kind: "missing" });
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await bearNames(context);
  await context.addInitScript(hurry, speed);
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  await cdp.send("Performance.enable");
  await begin(page, url, 120);
  await walkTo(page, isAtWork, 600);
  const pid = await rendererOf(browser);
  const rows: Row[] = [];
  const seen: Held[] = [];
  const note = async (hour: number): Promise<void> => {
    const now = await held(page, cdp, pid);
    seen.push(now);
    rows.push({
      what: `after ${hour} h`,
      figures: [mb(now.heapBytes), String(now.nodes), String(now.listeners), mb(now.residentBytes), String(now.facts)],
    });
  };
  await note(0);
  for (let hour = 1; hour <= hours; hour++) {
    await liveAnHour(page);
    await note(hour);
  }
  print(
    `memory over ${hours} h of work at ${speed} times its speed`,
    ["page's heap", "nodes", "listeners", "process", "facts"],
    rows,
  );
  const [first, last] = [seen[1] ?? seen[0], seen.at(-1)] as [Held, Held];
  const perHour = (last.heapBytes - first.heapBytes) / Math.max(1, hours - 1);
  const perFact = (last.heapBytes - first.heapBytes) / Math.max(1, last.facts - first.facts);
  console.log(
    `growth from the first hour on: ${(perHour / 1024).toFixed(0)} KB of heap an hour, ${perFact.toFixed(0)} bytes a fact`,
  );
  await browser.close();
}

/** Gloves are changed every five minutes, and every question is answered; between, time passes. */
async function liveAnHour(page: Page): Promise<void> {
  const realMs = (minutes: number) => (minutes * 60_000) / speed;
  const endMs = Date.now() + realMs(60);
  let eventMs = Date.now();
  while (Date.now() < endMs) {
    if (await isAtWork(page)) {
      const restMs = Math.min(endMs, eventMs) - Date.now();
      if (restMs > 0) await new Promise((later) => setTimeout(later, restMs));
      if (Date.now() >= endMs) return;
      eventMs = Date.now() + realMs(eventEveryMin);
      await page.keyboard.press("f");
      await page.locator('[data-testid="now"]:not([data-kind="atWork"])').waitFor({ timeout: patienceMs });
    } else {
      await act(page, false);
      await new Promise((later) => setTimeout(later, 50));
    }
  }
}
