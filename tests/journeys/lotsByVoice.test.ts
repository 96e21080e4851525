/**
 * Lots without a hand: Chromium's camera plays a film of a code held up, its microphone an artist who says the phrases.
 * Asked for by voice, read back aloud, confirmed by voice, kept; and a pack past its day is refused aloud.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { phrase, rateHz } from "../../audio/make/rehearsal/artistVoice";
import { passes, recordText, summarise, verifyRecord } from "../../src/export";
import type { RecordFile } from "../../src/export/recordFile";
import type { CommandId } from "../../src/intent/phrases";
import { codePicture, film } from "../support/codePictures";
import { atStep, choose, done, fillIn, openApp, patienceMs, start } from "./support/artist";
import { writeSound } from "./support/fakeSound";
import { diskNow } from "./support/onDiskRecords";
import { launchOptions, serve, type Watched, watch } from "./support/place";
import { provedSmall } from "./support/provedSmall";
import { announcedOn, hearTheSpeakers } from "./support/speakers";

/** Speech in our clips lies above this; digital silence is 0. Peak. */
const audible = 0.02;
/**
 * Said over and over: whatever the walk takes, the phrase comes round. Before it is its time, neither does anything. Between
 * the two the companion has time to say what it had to say before, and then to read back what the camera saw.
 */
const talk: readonly (readonly [atSec: number, CommandId])[] = [
  [2, "scan"],
  [34, "confirm"],
];
const loopSec = 42;

const folder = mkdtempSync(join(tmpdir(), "gloveside-lots-"));
const wav = join(folder, "talk.wav");
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let watched: Watched;

beforeAll(async () => {
  place = await serve();
  const sound = Float32Array.from({ length: loopSec * rateHz }, (_, at) => 0.0005 * Math.sin(at * 0.37 * (at % 7)));
  for (const [atSec, command] of talk)
    for (const [n, x] of phrase("station", command, join(folder, "phrases")).entries())
      sound[atSec * rateHz + n] = (sound[atSec * rateHz + n] ?? 0) + x;
  await writeSound(wav, sound);
});
afterEach(() => browser?.close());
afterAll(async () => {
  await place?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A session at the step that opens the needle, with this code before the camera. */
async function atTheNeedle(code: string): Promise<Page> {
  const video = join(folder, `${crypto.randomUUID()}.y4m`);
  writeFileSync(video, film([{ picture: codePicture("gs1datamatrix", code, { turnDeg: 9, shade: 0.5 }), seconds: 1 }]));
  const files = [`--use-file-for-fake-video-capture=${video}`, `--use-file-for-fake-audio-capture=${wav}`];
  const { executablePath, args } = launchOptions({ kind: "beeps" }, files);
  browser = await chromium.launch({ executablePath, args });
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.grantPermissions(["microphone", "camera"], { origin: place.url });
  await hearTheSpeakers(context);
  watched = await watch(context, place.url);
  const page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, place.url);
  await choose(page, provedSmall);
  await fillIn(page);
  await start(page);
  for (let steps = 0; steps < 5; steps++) await done(page);
  await atStep(page, "openNeedle");
  return page;
}

const kept = async (page: Page): Promise<RecordFile> => {
  const [record] = (await diskNow(page)).records;
  if (!record) throw new Error("nothing is kept");
  return record;
};
const entryOf = ({ entries }: RecordFile, type: string) => entries.find(({ fact }) => fact.type === type);
/** Loudest sample while these words stood there. */
const loudestOf = async (page: Page, words: string): Promise<number> =>
  Math.max(0, ...(await announcedOn(page)).filter(({ text }) => text.includes(words)).map(({ peak }) => peak));

it("a lot asked for, read back and confirmed by voice is in the record, as scanned", async () => {
  const page = await atTheNeedle("(01)09521234543213(17)280131(10)N-204");
  // Two rounds of the talk for each, on a machine that does something else, too.
  const wait = { timeout: 3 * patienceMs };
  await page.getByTestId("question").getByText("needle: lot N-204, good until 2028-01-31?").waitFor(wait);
  await expect.poll(async () => entryOf(await kept(page), "v1.LotGiven"), wait).toBeDefined();
  expect(await loudestOf(page, "november dash two zero four")).toBeGreaterThan(audible);

  const record = await kept(page);
  expect(entryOf(record, "v1.LotShown")).toMatchObject({ way: { by: "scan" }, known: "scanned" });
  expect(entryOf(record, "v1.LotGiven")).toMatchObject({
    fact: { item: "needle", lot: "N-204", expiry: "2028-01-31" },
    way: { by: "voice" },
    known: "said",
  });
  const { lots } = summarise(record.header.input, record.entries);
  expect(lots).toMatchObject([{ item: "needle", lot: "N-204", expiry: "2028-01-31", known: "scanned" }]);
  expect(passes(await verifyRecord(recordText(record), { acceptUnfinished: true }))).toBe(true);
  expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
});

it("a pack past its day is refused aloud, and no voice takes it", async () => {
  const page = await atTheNeedle("(01)09521234543213(17)250131(10)N-101");
  const wait = { timeout: 3 * patienceMs };
  await page.getByTestId("says").getByText("Needle: out of date. Use one in date.").waitFor(wait);
  await expect.poll(() => loudestOf(page, "out of date"), wait).toBeGreaterThan(audible);
  // The artist goes on to say "confirm" all the same, once in each round of the talk.
  await page.waitForTimeout(loopSec * 1000);
  const record = await kept(page);
  expect(record.entries.slice(-2)).toMatchObject([
    { fact: { type: "v1.LotShown", lot: "N-101" }, way: { by: "scan" } },
    { fact: { type: "v1.Refused", reason: "outOfDate", item: "needle" } },
  ]);
  expect(entryOf(record, "v1.LotGiven")).toBeUndefined();
  expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
});
