import { describe, expect, test } from "vitest";
import { shippedClips } from "../../src/rehearsal/clipManifest";
import { breakdownBar, wettedIn } from "../../src/rehearsal/interruptions";
import { spokenSession } from "../../src/rehearsal/spokenSession";
import { bundledProtocols } from "../../src/session/protocols";

const manifest = await shippedClips();

describe.each(bundledProtocols)("a whole session: $id", (protocol) => {
  test("interrupts the breakdown seldom, with eight surfaces or more", async () => {
    expect(wettedIn(protocol)).toBeGreaterThanOrEqual(8);
    const careful = await spokenSession(protocol, false, manifest);
    const brisk = await spokenSession(protocol, true, manifest);
    expect(careful.figures.interruptions.breakdown).toBeLessThan(breakdownBar);
    expect(brisk.figures.interruptions.breakdown).toBeLessThan(breakdownBar);
    expect(brisk.figures.words).toBeLessThan(careful.figures.words);
    expect(careful.figures.refused + brisk.figures.refused).toBe(0);
  });
});
