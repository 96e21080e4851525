import { execFileSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { check, isFaultless, soundOf } from "../../audio/make/rehearsal/check";
import type { Timeline } from "../../audio/make/rehearsal/record";
import type { ClipManifest } from "../../src/announcements/clips";
import { Practice } from "../../src/app/practice";
import { shippedClips } from "../../src/rehearsal/clipManifest";
import { open } from "../../src/rehearsal/opening";
import { liveThrough } from "../../src/rehearsal/replay";
import { wholenessOf } from "../../src/rehearsal/whole";
import type { Protocol } from "../../src/session/protocol";
import { protocolById } from "../../src/session/protocols";
import { tempFolder } from "../support/tempFolder";

const folder = "public/practice";
const timeline: Timeline = JSON.parse(readFileSync(`${folder}/timeline.json`, "utf8"));
const practice = Practice.parse(JSON.parse(readFileSync(`${folder}/practice.json`, "utf8")));
const protocol = protocolById(timeline.protocol) as Protocol;

const opened = () =>
  open({
    ...{ protocol, brisk: timeline.brisk, address: "station", startMs: 0, offsetMin: 0, zone: "UTC" },
    ...{ seed: "practice", phraseModel: null, appVersion: "0.0.0" },
  });

/** Every clip so much longer: announcements that run late, as in a busy browser. */
const slower = (manifest: ClipManifest, byMs: number): ClipManifest => ({
  ...manifest,
  clips: Object.fromEntries(
    Object.entries(manifest.clips).map(([key, clip]) => [key, { ...clip, durationMs: clip.durationMs + byMs }]),
  ),
});

/** @param beginsMs How much later than the sound the session begins. */
async function factsOf(manifest: ClipManifest, hearingMs: number, beginsMs = 0) {
  const labels = timeline.labels.map((label) => ({
    ...label,
    startMs: label.startMs - beginsMs,
    endMs: label.endMs - beginsMs,
  }));
  const room = await liveThrough(labels, await opened(), manifest, hearingMs);
  return room.story.flatMap((line) => (line.kind === "kept" ? line.facts : []));
}

/** What happened, without how long it took. */
const happenings = (facts: Awaited<ReturnType<typeof factsOf>>) =>
  facts
    .filter(({ type }) => type !== "v1.TimeWitnessed")
    .map(({ witnessedMs: _witnessed, cause: _cause, ...rest }) => ("creditedMs" in rest ? rest.type : rest));

describe("the practice recording", () => {
  test("is small, and of a protocol as it is bundled now", () => {
    expect(statSync(`${folder}/${practice.sound}`).size).toBeLessThanOrEqual(2_000_000);
    expect(practice.input.protocol).toEqual(protocol);
    expect(practice.input.brisk).toBe(timeline.brisk);
  });

  test("is heard without a mistake and carries a whole session", async () => {
    const out = tempFolder("practice");
    const wav = join(out, "practice.wav");
    execFileSync("ffmpeg", ["-y", "-loglevel", "error", "-i", `${folder}/${practice.sound}`, wav]);
    const checked = await check(soundOf(wav), timeline, out);
    expect({ ...checked.compared, isFaultless: isFaultless(checked) }).toMatchObject({
      missed: [],
      wrong: [],
      isFaultless: true,
    });
  });

  test.each([
    [80, 240, 0],
    [250, 240, 0],
    [0, 700, 0],
    [0, 240, 4_000],
    [250, 700, 4_000],
  ])(
    "comes to the same with clips %i ms longer, answers after %i ms, begun %i ms late",
    async (byMs, hearingMs, lateMs) => {
      const manifest = await shippedClips();
      const onTime = await factsOf(manifest, 240);
      const late = await factsOf(slower(manifest, byMs), hearingMs, lateMs);
      expect(wholenessOf(protocol, late)).toMatchObject({ missedSteps: [], refused: [], isClosed: true });
      expect(happenings(late)).toEqual(happenings(onTime));
    },
  );
});
