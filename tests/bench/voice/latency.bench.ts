/**
 * `npm run bench:latency`: in real Chromium, in the app as it is served, from the last sample of a phrase in the microphone
 * to the first sample of the earcon at the loudspeaker; and samples of the microphone that never reached the ear. The fake
 * microphone plays phrases of unseen voices, over and over. `-- MINUTES`, default 3; an hour says most about lost samples.
 */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { commands } from "../../../src/intent/phrases";
import { type Figure, figureTable, most } from "../../../src/recogniser/figures/figure";
import { quantile } from "../../../src/recogniser/figures/intervals";
import { fillIn, openApp, start } from "../../journeys/support/artist";
import { writeSound } from "../../journeys/support/fakeSound";
import { launchOptions, serve } from "../../journeys/support/place";
import { endsIn, firstAfter, tapEverything, tapped } from "./tapped";
import { said, testVoices } from "./voices";

const minutes = Number(process.argv[2] ?? 3);
const rateHz = 16_000;
const everySec = 5;
/** Answered by an earcon and nothing more, so that nothing else sounds when the next one comes. */
const asked = ["quieter", "louder"] as const;
/** Phrases stand at RMS 0.05; their last consonants may be 30 dB below. */
const phraseLevel = 0.0016;
const soundLevel = 0.002;

/** Each phrase a little later in its five seconds than the one before, so that they fall anywhere in the ear's steps. */
function recording(): Float32Array {
  const { voices } = testVoices();
  const sound = new Float32Array(2 * voices.length * everySec * rateHz);
  for (const [n, place] of Array.from({ length: 2 * voices.length }, (_, at) => at).entries()) {
    const voice = voices[n % voices.length];
    if (!voice) throw new Error("no synthesiser is installed: see npm run bench:voice");
    sound.set(
      said(voice, `station ${commands[asked[n % 2] ?? "louder"]}`, 1),
      Math.round((place * everySec + 0.5 + ((n * 0.037) % 0.4)) * rateHz),
    );
  }
  return sound;
}

const folder = await mkdtemp(join(tmpdir(), "latency-"));
const wav = join(folder, "phrases.wav");
await writeSound(wav, recording());
const place = await serve();
const { executablePath, args } = launchOptions({ kind: "beeps" });
const browser = await chromium.launch({ executablePath, args: [...args, `--use-file-for-fake-audio-capture=${wav}`] });
try {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, bypassCSP: true });
  await tapEverything(context);
  const page = await context.newPage();
  await openApp(page, place.url);
  await fillIn(page);
  await start(page);
  await page
    .locator('[data-testid="ear"]:is([data-condition="on"], [data-condition="slow"])')
    .waitFor({ timeout: 120_000 });
  await page.waitForTimeout(minutes * 60_000);
  const { mic, out, outputLatencyMs, capturedMs, skippedMs } = await tapped(page);
  const ends = endsIn(mic, phraseLevel, 1500);
  const found = ends.map((endMs) => firstAfter(out, soundLevel, endMs, 1500));
  const delays = ends.flatMap((endMs, n) => (typeof found[n] === "number" ? [found[n] - endMs] : []));
  const row = (what: string, of: string, value: number, unit: Figure["unit"], bar: Figure["bar"]): Figure => ({
    ...{ what, of, value, unit, bar },
    ...{ low: null, high: null, beside: null },
  });
  const answered = `${delays.length} answered of ${ends.length} phrases`;
  const figures = [
    row("end of phrase to earcon, median", answered, quantile(delays, 0.5), "ms", null),
    row("end of phrase to earcon, p95", answered, quantile(delays, 0.95), "ms", most(300)),
    row("samples that never reached the ear", `${(capturedMs / 60_000).toFixed(1)} min`, skippedMs, "ms", most(0)),
  ];
  console.log(`Chromium ${browser.version()}, output latency ${outputLatencyMs.toFixed(0)} ms (counted in).\n`);
  console.log(figureTable(figures).join("\n"));
} finally {
  await browser.close();
  await place.close();
  await rm(folder, { recursive: true });
}
