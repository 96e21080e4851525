/**
 * `npm run bench:record`: appends in Chromium and in a file, a lot among 10,000 sessions, facts verified in a second, sizes
 * and memory; each beside the plain alternative in the same run: every session looked at, or the whole record stringified
 * and hashed at once, which proves nothing of its parts. Bars: append p99 < 30 ms, 20,000 facts/s, search < 50 ms.
 */
import { createHash } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { chromium } from "playwright-core";
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { recordPage } from "../../bundle/build/recordPage";
import { packed } from "../../bundle/container";
import { newSigner, walkChain } from "../../log";
import { fileJournal } from "../../log/fileJournal";
import { currentRules } from "../../session/rules";
import { factsCsv } from "../factsCsv";
import { readRecord } from "../readRecord";
import { replay } from "../replay/replay";
import { sealRecord } from "../sealRecord";
import { surfacesCsv } from "../surfacesCsv";
import { verifyRecord } from "../verifyRecord";
import { live, openingFor, stampOf } from "./lived";
import { wholeSession } from "./wholeSession";

const input = inputFor(smallProtocol);
const signer = await newSigner();
const ms = (values: number[], q: number) => values.sort((a, b) => a - b)[Math.floor(values.length * q)]?.toFixed(2);

async function appends(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "gloveside-bench-"));
  const opened = await fileJournal(folder, signer).open(openingFor(input, signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  const taken: number[] = [];
  for (let cause = 0; cause < 500; cause++) {
    const start = performance.now();
    const fact = { type: "v1.TimeWitnessed", witnessedMs: 10_000, cause } as const;
    const kept = await opened.writer.append([fact], stampOf({ by: "clock" }, cause * 10_000));
    if (!kept.ok) throw new Error(kept.message);
    taken.push(performance.now() - start);
  }
  await opened.writer.release();
  await rm(folder, { recursive: true });
  console.log(`append, file, synced: median ${ms(taken, 0.5)} ms, p99 ${ms(taken, 0.99)} ms over ${taken.length}`);
}

async function verifies(): Promise<void> {
  const work = wholeSession.slice(0, -2);
  const longer = [
    ...work.slice(0, 14),
    ...Array.from({ length: 3000 }, () => rest).flat(),
    ...work.slice(14),
    ...wholeSession.slice(-2),
  ];
  const { journal, writer } = await live(input, longer, signer);
  const sealed = await sealRecord(journal, writer, signer, "2026-11-25T23:00:00.000+00:00");
  if (!sealed.ok) throw new Error(sealed.message);
  const bytes = new TextEncoder().encode(sealed.text);
  const facts = sealed.record.entries.length;
  const rate = async (what: string, act: () => unknown) => {
    await act();
    const [wall, cpu] = [performance.now(), process.cpuUsage()];
    for (let i = 0; i < 5; i++) await act();
    const used = process.cpuUsage(cpu);
    const perSecond = (micros: number) => Math.round((facts * 5e6) / micros);
    const byCpu = perSecond(used.user + used.system);
    console.log(
      `${what}: ${byCpu} facts/s of processor time, ${perSecond((performance.now() - wall) * 1000)} of wall time`,
    );
  };
  console.log(`${facts} facts, ${bytes.length} bytes`);
  const verdict = await verifyRecord(bytes);
  if (!verdict.intact.ok || !verdict.signedBy.ok || !verdict.follows.ok) throw new Error(JSON.stringify(verdict));
  await rate("verify, all three verdicts", () => verifyRecord(bytes));
  await rate("  read and shape", () => readRecord(bytes));
  await rate("  chain", () => walkChain(sealed.record.header, sealed.record.entries));
  await rate("  replay and summary", () => replay(currentRules, input, sealed.record.entries));
  await rate("plain: parse, stringify, hash the whole", () =>
    createHash("sha256")
      .update(JSON.stringify(JSON.parse(sealed.text)))
      .digest("hex"),
  );
}

const rest = [
  { type: "event.reported", event: "freshGloves" },
  { type: "step.done" },
  { type: "step.done" },
  { type: "step.done" },
] as const;

async function inChromium(): Promise<void> {
  const built = await build({
    entryPoints: [fileURLToPath(new URL("./benchInBrowser.ts", import.meta.url))],
    bundle: true,
    write: false,
    format: "iife",
  });
  const server = createServer(
    (_request, answer) => void answer.setHeader("Content-Type", "text/html").end("<title>bench</title>"),
  );
  await new Promise<void>((ready) => server.listen(0, "localhost", ready));
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu"],
  });
  try {
    const page = await browser.newPage();
    await page.goto(`http://localhost:${(server.address() as AddressInfo).port}/`);
    await page.addScriptTag({ content: built.outputFiles[0]?.text ?? "" });
    const taken = await page.evaluate(() => (globalThis as unknown as Bench).bench.appends());
    console.log(
      `append, Chromium, strict: median ${ms(taken, 0.5)} ms, p99 ${ms(taken, 0.99)} ms over ${taken.length}`,
    );
    const { byIndex, plain } = await page.evaluate(() => (globalThis as unknown as Bench).bench.search());
    console.log(`lot among 10,000 sessions, by index: median ${ms(byIndex.taken, 0.5)} ms, ${byIndex.found} found`);
    console.log(`  plain, every session looked at: median ${ms(plain.taken, 0.5)} ms, ${plain.found} found`);
  } finally {
    await browser.close();
    server.close();
  }
}

type Timed = { found: number; taken: number[] };
type Bench = { bench: { appends(): Promise<number[]>; search(): Promise<{ byIndex: Timed; plain: Timed }> } };

async function sizes(): Promise<void> {
  const { journal, writer } = await live(input, wholeSession, signer);
  const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
  if (!sealed.ok) throw new Error(sealed.message);
  const { record, text } = sealed;
  const page = packed(await recordPage("0.1.0"), text) ?? "";
  const bytes = (one: string) => `${Buffer.byteLength(one)} bytes`;
  console.log(`${record.entries.length} facts: JSON ${bytes(text)}, page that verifies itself ${bytes(page)}`);
  console.log(`  tables: facts ${bytes(factsCsv(record))}, surfaces ${bytes(surfacesCsv(record))}`);
}

await inChromium();
await appends();
await verifies();
await sizes();
console.log(
  `memory: ${Math.round(process.memoryUsage().rss / 1e6)} MB resident, ${Math.round(process.memoryUsage().heapUsed / 1e6)} MB of it heap in use`,
);
