/**
 * A note by voice in a real Chromium, with real sound into the browser's microphone: the phrase is said, somebody talks,
 * and falls silent. The note is kept, plays, travels in the record's own page, verifies; and is erased.
 */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { phrase, rateHz } from "../../audio/make/rehearsal/artistVoice";
import { packed } from "../../src/bundle/container";
import { passes, recordText, verifyRecord } from "../../src/export";
import type { RecordFile } from "../../src/export/recordFile";
import type { CommandId } from "../../src/intent/phrases";
import { bytesOfBase64, type PersonalPart } from "../../src/log/personal";
import { readWav } from "../../src/recogniser";
import { fillIn, openApp, patienceMs, start } from "./support/artist";
import { writeSound } from "./support/fakeSound";
import { press } from "./support/keyboard";
import { diskNow, everyStored } from "./support/onDiskRecords";
import { launchOptions, serve, type Watched, watch } from "./support/place";

const root = fileURLToPath(new URL("../../", import.meta.url));
let folder = "";
let place: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let watched: Watched;

/** Said by the recorded artist: the phrase, and then, well inside the note, reports that must not act. */
const talk: readonly (readonly [atSec: number, CommandId])[] = [
  [10, "note"],
  [15, "done"],
  [17, "dropped"],
  [19, "done"],
];
/** Long enough that the phrase does not come round while something else is tried. */
const loopSec = 90;

function soundOfTalk(): Float32Array {
  const sound = Float32Array.from({ length: loopSec * rateHz }, (_, at) => 0.0005 * Math.sin(at * 0.37 * (at % 7)));
  for (const [atSec, command] of talk)
    for (const [n, x] of phrase("station", command, join(folder, "phrases")).entries())
      sound[atSec * rateHz + n] = (sound[atSec * rateHz + n] ?? 0) + x;
  return sound;
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "notes-"));
  place = await serve();
  const wav = join(folder, "talk.wav");
  await writeSound(wav, soundOfTalk());
  const { executablePath, args } = launchOptions({ kind: "beeps" }, [`--use-file-for-fake-audio-capture=${wav}`]);
  browser = await chromium.launch({ executablePath, args });
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.grantPermissions(["microphone"], { origin: place.url });
  watched = await watch(context, place.url);
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
});
afterAll(async () => {
  await browser?.close();
  await place?.close();
  await rm(folder, { recursive: true });
});

const now = async (): Promise<RecordFile> => {
  const [record] = (await diskNow(page)).records;
  if (!record) throw new Error("nothing is kept");
  return record;
};
const noteIn = ({ entries }: RecordFile) => entries.find(({ fact }) => fact.type === "v1.NoteKept");
const partIn = ({ personal }: RecordFile) =>
  personal?.find((part): part is Extract<PersonalPart, { wav: string }> => "wav" in part);

const violationsIn = async (part: string): Promise<string[]> => {
  const { violations } = await new AxeBuilder({ page }).include(part).analyze();
  return violations.map(({ id }) => id);
};

/** Plays what an audio element holds, and says how long it is. */
const played = (at: Page): Promise<number> =>
  at
    .locator("audio")
    .first()
    .evaluate(async (audio: HTMLAudioElement) => {
      audio.muted = true;
      await audio.play();
      await new Promise<void>((moved) => {
        audio.ontimeupdate = () => audio.currentTime > 0.2 && moved();
      });
      return audio.duration;
    });

it("records what is said after the phrase, shows it, and keeps it after a silence", async () => {
  await openApp(page, place.url);
  await fillIn(page, { client: "C-041" });
  await start(page);
  const sign = page.getByTestId("note-sign");
  await sign.getByText("Recording a note").waitFor({ timeout: 3 * patienceMs });
  await sign.getByRole("timer").waitFor();
  await sign.getByRole("button", { name: "End the note" }).waitFor();
  await sign.waitFor({ state: "detached" });
  const record = await now();
  const entry = noteIn(record);
  const sound = readWav(bytesOfBase64(partIn(record)?.wav ?? "") ?? new Uint8Array());
  if (entry?.fact.type !== "v1.NoteKept" || !sound.ok) return expect.fail("no note is kept");
  const { lengthMs } = entry.fact;
  const { samples } = sound.sound;
  expect([sound.sound.rateHz, entry.way.by, entry.known]).toEqual([16_000, "voice", "said"]);
  expect(Math.abs(samples.length / 16 - lengthMs)).toBeLessThan(20);
  // The voice is in it: it was played at a root mean square of 0.05.
  expect(samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0)).toBeGreaterThan(0.05);
  const during = record.entries.filter(
    ({ monoMs, way }) => way.by === "voice" && monoMs > entry.monoMs - lengthMs && monoMs < entry.monoMs,
  );
  expect(during.map(({ fact }) => fact.type)).toEqual([]);
});

it("a hand starts another and ends it, and that is kept too", async () => {
  await page.keyboard.press("d");
  const sign = page.getByTestId("note-sign");
  await sign.getByText("Recording a note").waitFor();
  // A second of sound is on its timer.
  await sign.getByText(/^[12]\d s left$/).waitFor();
  await page.keyboard.press("d");
  await sign.waitFor({ state: "detached" });
  const { entries } = await now();
  const kept = entries.filter(({ fact }) => fact.type === "v1.NoteKept");
  expect(kept.map(({ way }) => way.by)).toEqual(["voice", "keyboard"]);
});

it("shows a sign that everybody can read while one is recorded", async () => {
  const sign = page.getByTestId("note-sign");
  // On a busy machine a note may end by its silence before the sign was looked at: then another is begun.
  const looked = async () => {
    if (!(await sign.isVisible())) await page.keyboard.press("d");
    await sign.getByText("Recording a note").waitFor();
    return violationsIn('[data-testid="note-sign"]').catch(() => "the note had ended");
  };
  await expect.poll(looked, { timeout: patienceMs }).toEqual([]);
  if (await sign.isVisible()) await page.keyboard.press("d");
  await sign.waitFor({ state: "detached" });
});

it("a page that dies while a note is spoken loses that note and nothing else", async () => {
  const before = await now();
  await page.keyboard.press("d");
  await page
    .getByTestId("note-sign")
    .getByText(/^[12]\d s left$/)
    .waitFor();
  await page.reload();
  await page.getByTestId("session").waitFor();
  const after = await now();
  expect(after.entries.slice(0, before.entries.length)).toEqual(before.entries);
  expect(after.personal).toEqual(before.personal);
  const { intact } = await verifyRecord(recordText(after), { acceptUnfinished: true });
  expect(intact.ok).toBe(true);
});

it("verifies, plays among the records, and plays in the page that carries its record with nothing else at hand", async () => {
  const record = await now();
  const text = recordText(record);
  const verdict = await verifyRecord(text, { acceptUnfinished: true });
  const kept = record.entries.filter(({ fact }) => fact.type === "v1.NoteKept").length;
  expect([passes(verdict), verdict.personal?.notes]).toEqual([true, { kept, erased: 0, notIncluded: 0 }]);
  expect(kept).toBeGreaterThanOrEqual(2);

  const template = await readFile(join(root, "dist/record-page.html"), "utf8");
  await writeFile(join(folder, "record.html"), packed(template, text) ?? "");
  const alone = await browser.newContext({ offline: true });
  const carried = await alone.newPage();
  await carried.goto(`file://${join(folder, "record.html")}`);
  await carried.getByTestId("note").first().waitFor();
  const lengths = await carried.locator("audio").evaluateAll(async (all) =>
    Promise.all(
      (all as HTMLAudioElement[]).map(async (audio) => {
        audio.muted = true;
        await audio.play();
        return audio.duration;
      }),
    ),
  );
  await alone.close();
  expect(lengths.length).toBe(kept);
  expect(Math.min(...lengths)).toBeGreaterThan(0.5);
});

it("is erased in one step: no byte of it is kept, the record verifies and says so", async () => {
  const before = await now();
  // Another tab begins with the prepare screen.
  await page.close();
  page = await context.newPage();
  page.setDefaultTimeout(patienceMs);
  await openApp(page, place.url);
  await press(page, page.getByRole("link", { name: "Records", exact: true }));
  const row = page.getByTestId("sessions").getByRole("listitem").first();
  await press(page, row.getByText("The client’s part"));
  const part = page.getByTestId("personal-part");
  await part.getByTestId("note").first().waitFor();
  const second = part.getByRole("button", { name: "Erase this note" }).nth(1);
  await second.click();
  expect(await violationsIn('[data-testid="personal-part"]')).toEqual([]);
  await page.getByRole("button", { name: "Erase for good" }).click();
  await part.locator('[data-testid="note"][data-state="erased"]').waitFor();
  expect(await played(page)).toBeGreaterThan(3);

  await part.getByRole("button", { name: "Erase the client’s part" }).click();
  await page.getByRole("button", { name: "Erase for good" }).click();
  await page.locator('[data-testid="personal-part"][data-client="erased"]').waitFor();
  const after = await now();
  const erased = after.entries.filter(({ fact }) => fact.type === "v1.NoteKept").length;
  const verdict = await verifyRecord(recordText(after), { acceptUnfinished: true });
  expect([passes(verdict), verdict.personal]).toEqual([
    true,
    { client: "erased", notes: { kept: 0, erased, notIncluded: 0 } },
  ]);
  const stored = await everyStored(page);
  for (const one of before.personal ?? []) {
    if ("wav" in one) expect(stored).not.toContain(one.wav.slice(2_000, 4_000));
    if ("text" in one) expect(stored).not.toContain(one.text);
  }
  expect(watched).toEqual({ foreign: [], violations: [], errors: [] });
});
