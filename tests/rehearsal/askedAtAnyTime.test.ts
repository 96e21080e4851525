/** What an artist may ask at any time by voice: silence, what may be said, and whether a thing may be touched. */
import { describe, expect, test } from "vitest";
import type { CommandId } from "../../src/intent/phrases";
import { shippedClips } from "../../src/rehearsal/clipManifest";
import { open } from "../../src/rehearsal/opening";
import { enterRoom } from "../../src/rehearsal/room";
import { smallProtocol } from "../support/smallProtocol";

const begun = async () => {
  const opened = await open({
    ...{ protocol: smallProtocol, brisk: false, address: "station", startMs: Date.UTC(2026, 10, 25, 10) },
    ...{ offsetMin: 0, zone: "UTC", seed: "asked", phraseModel: null, appVersion: "0.0.0" },
  });
  const room = await enterRoom(opened, await shippedClips());
  const passMs = async (ms: number) => {
    for (const untilMs = room.nowMs + ms; room.nowMs < untilMs; ) await room.pass(100);
  };
  const say = async (command: CommandId) => {
    const { address } = opened.input;
    await room.hear({ kind: "understood", address, command, confidence: 1, permitted: true, atMs: room.nowMs });
  };
  const told = () => room.story.flatMap((line) => (line.kind === "said" ? [line.text] : []));
  const kept = () => room.story.filter((line) => line.kind === "kept").length;
  return { room, passMs, say, told, kept };
};

describe("at any time", () => {
  test("it is quiet at once when asked, and nothing is kept of that; the step is there when asked again", async () => {
    const { room, passMs, say, told, kept } = await begun();
    await passMs(1_000);
    expect(room.companion.speaking).not.toBeNull();
    const facts = kept();
    await say("hush");
    expect(room.companion.speaking).toBeNull();
    await passMs(10_000);
    const quiet = told().length;
    await say("again");
    await passMs(8_000);
    expect(told().slice(quiet)).toEqual(["Do washHands"]);
    expect(kept()).toBe(facts);
  });

  test("it tells what may be said, in its own words", async () => {
    const { passMs, say, told } = await begun();
    await passMs(20_000);
    await say("options");
    await passMs(8_000);
    expect(told().at(-1)).toMatch(/^You may say: completed, /);
  });

  test("asked whether a thing may be handled, it names them one by one and answers with the reason", async () => {
    const { passMs, say, told, room } = await begun();
    await passMs(20_000);
    await say("mayITouch");
    await passMs(4_000);
    expect(told().at(-1)).toMatch(/^Which one\? /);
    expect([...room.companion.listenedFor]).toEqual(expect.arrayContaining(["yes", "no"]));
    await say("yes");
    await passMs(6_000);
    expect(told().at(-1)).toMatch(/^No\. .*hands are not washed/);
  });
});
