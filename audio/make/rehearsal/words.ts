/**
 * `npm run words`: what the companion says over a whole session of each bundled protocol, careful and brisk, with an
 * artist who takes each step's hands-on time. No sound is needed. Exit code 1 if the breakdown is interrupted too often.
 */

import { shippedClips } from "../../../src/rehearsal/clipManifest";
import { figureLines } from "../../../src/rehearsal/figures";
import { breakdownBar, wettedIn } from "../../../src/rehearsal/interruptions";
import { spokenSession } from "../../../src/rehearsal/spokenSession";
import { clock } from "../../../src/rehearsal/story";
import { bundledProtocols } from "../../../src/session/protocols";

const manifest = await shippedClips();
for (const protocol of bundledProtocols) {
  console.log(`${protocol.id}: ${wettedIn(protocol)} surfaces wetted in the breakdown`);
  for (const brisk of [false, true]) {
    const { figures, story, lengthMs, labels } = await spokenSession(protocol, brisk, manifest);
    console.log(`  ${brisk ? "brisk" : "careful"}: ${clock(lengthMs)}, ${labels.length} phrases said by the artist`);
    for (const line of figureLines(figures)) console.log(`    ${line}`);
    const spoken = story.filter((line) => line.kind === "said" && line.phase === "breakdown" && !line.solicited);
    for (const line of spoken) if (line.kind === "said") console.log(`      ${clock(line.atMs)} ${line.text}`);
    if (figures.interruptions.breakdown >= breakdownBar) process.exitCode = 1;
  }
}
