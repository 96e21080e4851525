/**
 * `npm run practice`: the recording behind the app's practice button, small enough to ship. Made by the same artist, with
 * no machine running, since people listen to it. Written only if the ear, hearing the packed file, misses nothing.
 */
import { execFileSync } from "node:child_process";
import { copyFileSync, mkdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Practice } from "../../../src/app/practice";
import { clock } from "../../../src/rehearsal/story";
import { hasVoice, howToInstall } from "./artistVoice";
import { check, isFaultless, soundOf } from "./check";
import { folder, record, type Take, timelineOf, write } from "./record";

const take: Take = { protocol: "conventionBooth", brisk: true, snrDb: null, seed: 2 };
const shipped = "public/practice";
const sound = "booth.mp3";
const largestBytes = 2_000_000;

if (!hasVoice()) {
  console.error(`practice: ${howToInstall}`);
  process.exitCode = 2;
} else process.exitCode = await practise();

async function practise(): Promise<number> {
  const recorded = await record(take);
  const { wav } = write({ ...take, protocol: "practice" }, recorded);
  const packed = join(folder, sound);
  const ffmpeg = (...args: string[]) => execFileSync("ffmpeg", ["-y", "-loglevel", "error", ...args]);
  // The tag of the encoder would change the bytes with its version.
  ffmpeg(
    "-i",
    wav,
    "-c:a",
    "libmp3lame",
    "-q:a",
    "9",
    "-fflags",
    "+bitexact",
    "-flags:a",
    "+bitexact",
    "-write_xing",
    "1",
    packed,
  );
  const unpacked = join(folder, "practice.unpacked.wav");
  ffmpeg("-i", packed, unpacked);
  const timeline = timelineOf(take, recorded);
  const checked = await check(soundOf(unpacked), timeline, join(folder, "practice"));
  const { missed, wrong, right, said } = checked.compared;
  const { size } = statSync(packed);
  console.log(`${packed}: ${clock(timeline.soundMs)}, ${size} bytes, ${right} of ${said} phrases heard`);
  if (!isFaultless(checked) || size > largestBytes) {
    console.error(
      `practice: not shipped: ${missed.length} missed, ${wrong.length} wrong, ${checked.whole.missedSteps.length} steps missed`,
    );
    return 1;
  }
  const practice = Practice.parse({
    format: "gloveside-practice",
    formatVersion: 1,
    sound,
    input: { ...recorded.opened.input, station: "Practice station", clientReference: "practice" },
  });
  mkdirSync(shipped, { recursive: true });
  copyFileSync(packed, join(shipped, sound));
  writeFileSync(join(shipped, "practice.json"), `${JSON.stringify(practice)}\n`);
  writeFileSync(join(shipped, "timeline.json"), `${JSON.stringify(timeline, null, 1)}\n`);
  return 0;
}
