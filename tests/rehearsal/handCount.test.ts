/** Hands counted in a session: the artist asks "how long" at the sink, and the companion counts aloud. */
import { describe, expect, test } from "vitest";
import type { CommandId } from "../../src/intent/phrases";
import { shippedClips } from "../../src/rehearsal/clipManifest";
import { open } from "../../src/rehearsal/opening";
import { enterRoom } from "../../src/rehearsal/room";
import { smallProtocol } from "../support/smallProtocol";

const spoken = async () => {
  const opened = await open({
    ...{ protocol: smallProtocol, brisk: false, address: "station", startMs: Date.UTC(2026, 10, 25, 10) },
    ...{ offsetMin: 0, zone: "UTC", seed: "hands", phraseModel: null, appVersion: "0.0.0" },
  });
  const room = await enterRoom(opened, await shippedClips());
  const passMs = async (ms: number) => {
    for (const untilMs = room.nowMs + ms; room.nowMs < untilMs; ) await room.pass(100);
  };
  const say = async (command: CommandId) => {
    const { address } = opened.input;
    await room.hear({ kind: "understood", address, command, confidence: 1, permitted: true, atMs: room.nowMs });
  };
  await passMs(20_000);
  const told = () => room.story.flatMap((line) => (line.kind === "said" ? [{ text: line.text, atMs: line.atMs }] : []));
  return { room, passMs, say, told };
};

describe("hands in a session", () => {
  test("are counted aloud when asked for, and never sooner than the forty seconds of WHO 2009", async () => {
    const { passMs, say, told, room } = await spoken();
    expect(room.companion.state.context.world.place).toMatchObject({ list: "setUp" });
    const from = told().length;
    await say("howLong");
    await passMs(50_000);
    expect(
      told()
        .slice(from)
        .map(({ text }) => text),
    ).toEqual(["Counting to forty, from now.", "Ten", "Twenty", "Thirty", "Forty. Long enough."]);
    const [begun, ...counts] = told().slice(from);
    expect((counts.at(-1)?.atMs ?? 0) - (begun?.atMs ?? 0)).toBeGreaterThanOrEqual(40_000);
    expect(room.companion.handCount).toMatchObject({ state: "done" });
  });

  test("are not counted unasked, and state nothing: what counts is what the artist says", async () => {
    const { passMs, say, told, room } = await spoken();
    const before = told().length;
    await passMs(50_000);
    expect(told().length).toBe(before);
    const kept = () => room.story.filter((line) => line.kind === "kept").length;
    const facts = kept();
    await say("howLong");
    await passMs(45_000);
    expect(kept()).toBe(facts);
  });

  test("are no longer counted once the artist has gone on", async () => {
    const { passMs, say, told, room } = await spoken();
    await say("howLong");
    await passMs(5_000);
    await say("done");
    await passMs(50_000);
    expect(room.companion.handCount).toBeNull();
    expect(told().some(({ text }) => text === "Ten")).toBe(false);
  });
});
