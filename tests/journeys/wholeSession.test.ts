/**
 * A whole session by voice: a recording is the microphone of a real Chromium, and nothing is touched after "start". The
 * record that comes out states the same as the one that `rehearse` makes from the same sound.
 */
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { check, soundOf } from "../../audio/make/rehearsal/check";
import { folder, record, type Take, timelineOf, write } from "../../audio/make/rehearsal/record";
import { verifyRecord } from "../../src/export";
import type { SessionFact } from "../../src/session/fact";
import { fillIn, openApp, patienceMs, start } from "./support/artist";
import { openBrowser, serve, type Watched, watch } from "./support/place";
import { type Announced, announcedOn, hearTheSpeakers } from "./support/speakers";

/** The booth's wipes need 60 s, so its whole session fits into twelve minutes. */
const take: Take = { protocol: "conventionBooth", brisk: true, snrDb: 15, seed: 4 };

interface Read {
  readonly entries: readonly { readonly fact: SessionFact }[];
}

let browser: Browser;
let place: Awaited<ReturnType<typeof serve>>;
let watched: Watched;
let text: string;
let rehearsed: Read;
let announced: readonly Announced[];

beforeAll(async () => {
  const recorded = await record(take);
  const { wav } = write(take, recorded);
  const timeline = timelineOf(take, recorded);
  const { recordPath } = await check(soundOf(wav), timeline, `${folder}/journey`);
  rehearsed = JSON.parse(await readFile(recordPath, "utf8"));

  place = await serve();
  browser = await openBrowser({ kind: "recording", wav: resolve(wav) });
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  watched = await watch(context, place.url);
  await hearTheSpeakers(context);
  const page = await context.newPage();
  await openApp(page, place.url);
  await page.getByRole("radio", { name: /Convention booth/ }).check({ force: true });
  await page.getByRole("radio", { name: "Brisk" }).check({ force: true });
  await fillIn(page);
  await start(page);
  text = await sealedBy(page, timeline.soundMs + 60_000);
  announced = await announcedOn(page);
}, 1_500_000);

afterAll(async () => {
  await browser?.close();
  await place?.close();
});

/** Waits for the close, touching nothing; saving the record comes after the session. */
async function sealedBy(page: Page, withinMs: number): Promise<string> {
  await page.getByTestId("sealing").getByText("Sealed").waitFor({ timeout: withinMs });
  const saving = page.waitForEvent("download", { timeout: patienceMs });
  await page.getByRole("button", { name: "Save the record" }).click();
  return readFile(await (await saving).path(), "utf8");
}

/** Stated by the clocks alone; they fall a tick earlier or later between two things that are said. */
const byClock: ReadonlySet<SessionFact["type"]> = new Set(["v1.TimeWitnessed", "v1.ReapplyDue", "v1.WetClockTimeUp"]);

/** What a fact states, without when: watched time, the number of its event, the day, credited milliseconds. */
const stated = (fact: SessionFact) => {
  const { witnessedMs: _ms, cause: _cause, ...rest } = fact;
  const { today: _today, creditedMs: _credited, ...whole } = rest as Record<string, unknown>;
  return whole;
};
/** Midnight may pass while the recording plays; the rehearsal's clock stands at ten in the morning. */
const isOfTheDay = (fact: SessionFact) => fact.type === "v1.DayTurned";
const said = ({ entries }: Read) =>
  entries.filter(({ fact }) => !byClock.has(fact.type) && !isOfTheDay(fact)).map(({ fact }) => stated(fact));
const clocked = ({ entries }: Read) =>
  entries
    .filter(({ fact }) => byClock.has(fact.type) && fact.type !== "v1.TimeWitnessed")
    .map(({ fact }) => JSON.stringify(stated(fact)))
    .sort();

describe("a whole session by voice in a real browser", () => {
  it("seals a record that is intact and follows from its facts", async () => {
    expect(await verifyRecord(text)).toMatchObject({ intact: { ok: true }, follows: { ok: true } });
  });

  it("states what the rehearsal of the same sound states", () => {
    const read: Read = JSON.parse(text);
    expect(said(read)).toEqual(said(rehearsed));
    expect(clocked(read)).toEqual(clocked(rehearsed));
  });

  it("sounded whenever it announced something", () => {
    expect(announced.length).toBeGreaterThan(60);
    expect(announced.filter(({ peak }) => peak < 0.02)).toEqual([]);
  });

  it("asked nobody outside its origin, kept to its policy and met no error", () => {
    expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
  });
});
