/**
 * `npm run bench:find`: "which sessions used this lot" over 10,000 records in a real Chromium, by the index and by two plain
 * ways of looking at every record, in one run.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { staticServer } from "../../bin/staticServer.mjs";
import { openBrowser } from "../journeys/support/place";

const records = Number(process.argv[2] ?? 10_000);
const lots = records / 10;
const folder = mkdtempSync(join(tmpdir(), "gloveside-find-"));
await build({
  ...{ entryPoints: ["tests/bench/findPage.ts"], bundle: true, format: "esm", outfile: join(folder, "page.js") },
  define: { "import.meta.env": "{}" },
});
writeFileSync(
  join(folder, "index.html"),
  '<!doctype html><title>find</title><script type="module" src="page.js"></script>',
);
const server = staticServer(folder);
await new Promise<void>((ready) => server.listen(0, "localhost", ready));
const browser = await openBrowser();
const page = await browser.newPage();
page.setDefaultTimeout(0);
await page.goto(`http://localhost:${(server.address() as AddressInfo).port}/`);
await page.waitForFunction(() => "seed" in globalThis);

type Timed = { taken: number[]; found: number };
const inPage = <T>(what: string, ...args: number[]): Promise<T> =>
  page.evaluate(
    ([name, given]) =>
      (globalThis as never as Record<string, (...a: number[]) => Promise<never>>)[name as string]?.(
        ...(given as number[]),
      ),
    [what, args] as const,
  ) as Promise<T>;
const quantile = (taken: number[], q: number): number => {
  const sorted = taken.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * q))] ?? Number.NaN;
};
const line = (name: string, { taken, found }: Timed): void =>
  console.log(
    [
      name.padEnd(34),
      ...[quantile(taken, 0.5), quantile(taken, 0.99), Math.max(...taken)].map((ms) =>
        `${ms.toFixed(1)} ms`.padStart(12),
      ),
      String(found).padStart(7),
      String(taken.length).padStart(6),
    ].join(""),
  );

const seedStart = performance.now();
const bytes = await inPage<number>("seed", records);
console.log(
  `${records} sealed records of about ${(bytes / 1000).toFixed(1)} kB, seeded in ${((performance.now() - seedStart) / 1000).toFixed(0)} s`,
);
console.log(
  `${"sessions that used one lot".padEnd(34)}${["median", "p99", "worst"].map((h) => h.padStart(12)).join("")}${"found".padStart(7)}${"runs".padStart(6)}`,
);
line("by the index", await inPage<Timed>("byIndex", 200, lots));
line("plain: 500 records at a time", await inPage<Timed>("plainInRuns", 5, lots));
line("plain: one record at a time", await inPage<Timed>("plain", 3, lots));
await browser.close();
server.close();
rmSync(folder, { recursive: true, force: true });
