/**
 * `npm run rehearse:demo`: a whole session of a bundled protocol, recorded beside a machine at 15 dB, through the real
 * ear, chart and log to a sealed record; then that record verified, and verified again with one byte changed. Exit code
 * 1 if anything was missed, heard wrongly, or verified that should not.
 */

import { shippedClips } from "../../../src/rehearsal/clipManifest";
import { figureLines } from "../../../src/rehearsal/figures";
import { spokenSession } from "../../../src/rehearsal/spokenSession";
import { clock } from "../../../src/rehearsal/story";
import { protocolById } from "../../../src/session/protocols";
import { hasVoice, howToInstall } from "./artistVoice";
import { check, isFaultless, soundOf, verifyTwice } from "./check";
import { demonstrated, folder, nameOf, record, timelineOf, write } from "./record";

const take = demonstrated;

if (!hasVoice()) {
  console.error(`rehearse:demo: ${howToInstall}`);
  process.exitCode = 2;
} else process.exitCode = (await demo()) ? 0 : 1;

async function demo(): Promise<boolean> {
  const recorded = await record(take);
  const { wav } = write(take, recorded);
  const timeline = timelineOf(take, recorded);
  console.log(`${wav}: ${clock(timeline.soundMs)}, ${timeline.labels.length} phrases, machine at ${take.snrDb} dB`);
  const checked = await check(soundOf(wav), timeline, `${folder}/${nameOf(take)}`);
  const { compared, whole, rehearsal, recordPath } = checked;
  for (const line of figureLines(rehearsal.figures)) console.log(line);
  console.log(
    `phrases: ${compared.right} of ${compared.said} right, ${compared.missed.length} missed, ${compared.wrong.length} wrong`,
  );
  for (const { atMs, said, heard } of [...compared.missed, ...compared.wrong])
    console.log(`  ${clock(atMs)} said ${said ?? "nothing"}, heard ${heard ?? "nothing"}`);
  console.log(
    `steps: ${whole.steps - whole.missedSteps.length} of ${whole.steps} done, ${whole.refused.length} refusals, ${whole.isClosed ? "closed with the sharps balanced" : "NOT CLOSED"}`,
  );
  for (const step of whole.missedSteps) console.log(`  missed: ${step}`);
  const verified = await verifyTwice(recordPath, 20_001);
  console.log(`${recordPath}: ${verified.asItIs ? "verified" : "NOT VERIFIED"}`);
  console.log(`with one byte changed: ${verified.altered ? "STILL VERIFIED" : "not verified, as it should be"}`);
  await printWords();
  return isFaultless(checked) && verified.asItIs && !verified.altered;
}

async function printWords(): Promise<void> {
  const protocol = protocolById(take.protocol);
  if (!protocol) return;
  const manifest = await shippedClips();
  for (const brisk of [false, true]) {
    const { figures } = await spokenSession(protocol, brisk, manifest);
    console.log(`words over a whole session, ${brisk ? "brisk" : "careful"}: ${figures.words}`);
  }
}
