/** Frames while five wet clocks count and the microphone listens, on a processor four times slower. */
import type { Browser } from "playwright-core";
import { patienceMs } from "../../journeys/support/artist";
import { bearNames, begin } from "./begin";
import { countSound, soundCounted } from "./soundCount";
import { slowdown } from "./starts";
import { ms, percent, print, quantile } from "./table";
import { countingClocks, walkTo } from "./walkTo";

export interface Frames {
  readonly gapsMs: readonly number[];
  readonly longTasks: number;
}

const clocks = 5;

export async function measureFrames(browser: Browser, url: string, forSec: number): Promise<void> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await bearNames(context);
  await countSound(context);
  const page = await context.newPage();
  // Long enough for both measurements once the last of them was wetted.
  await begin(page, url, 3 * forSec + 30);
  await page.locator('[data-testid="ear"][data-condition="on"]').waitFor({ timeout: patienceMs });
  await walkTo(page, async () => (await countingClocks(page)) >= clocks, 600);
  const cdp = await context.newCDPSession(page);
  const rows = [];
  for (const rate of [1, slowdown]) {
    await cdp.send("Emulation.setCPUThrottlingRate", { rate });
    const before = await soundCounted(page);
    const { gapsMs, longTasks } = await framesOf(page, forSec);
    const after = await soundCounted(page);
    const over = (limit: number) => percent(gapsMs.filter((gap) => gap > limit).length / gapsMs.length);
    rows.push({
      what: `${await countingClocks(page)} clocks, processor ${rate} times slower, ${forSec} s`,
      figures: [
        ms(quantile(gapsMs, 0.5)),
        ms(quantile(gapsMs, 0.99)),
        over(17.7),
        over(33.4),
        String(longTasks),
        `${after.droppedFrames - before.droppedFrames} of ${after.frames - before.frames}`,
        String(after.behind - before.behind),
      ],
    });
  }
  print(
    "frames in a session  (bar 60 a second, no sound dropped)",
    ["median", "p99", "over 16.7 ms", "over 33.3 ms", "tasks > 50 ms", "sound dropped", "ear behind"],
    rows,
  );
  await context.close();
}

const framesOf = (page: import("playwright-core").Page, forSec: number): Promise<Frames> =>
  page.evaluate(
    (sec) =>
      new Promise<Frames>((done) => {
        const gapsMs: number[] = [];
        let longTasks = 0;
        const watch = new PerformanceObserver((list) => {
          longTasks += list.getEntries().length;
        });
        watch.observe({ entryTypes: ["longtask"] });
        const endMs = performance.now() + sec * 1000;
        let last: number | null = null;
        const frame = (atMs: number) => {
          if (last !== null) gapsMs.push(atMs - last);
          last = atMs;
          if (atMs < endMs) return requestAnimationFrame(frame);
          watch.disconnect();
          done({ gapsMs, longTasks });
        };
        requestAnimationFrame(frame);
      }),
    forSec,
  );
