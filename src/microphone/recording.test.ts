import { describe, expect, test } from "vitest";
import { type Pace, recordingSource } from "./recording";
import type { SoundEvent } from "./vocabulary";

/** Time that passes when told to. */
function scriptedPace() {
  let nowMs = 0;
  const turns = new Set<() => void>();
  const pace: Pace = {
    now: () => nowMs,
    every(_ms, turn) {
      turns.add(turn);
      return () => turns.delete(turn);
    },
  };
  const pass = (ms: number) => {
    nowMs += ms;
    for (const turn of [...turns]) turn();
  };
  return { pace, pass };
}
const stereo = (left: Float32Array, right: Float32Array) => ({
  sampleRate: 8000,
  length: left.length,
  numberOfChannels: 2,
  getChannelData: (channel: number) => (channel === 0 ? left : right),
});
const soundIn = (events: readonly SoundEvent[]) => events.flatMap((e) => (e.type === "sound" ? [...e.samples] : []));

describe("a recording as a source", () => {
  const left = Float32Array.from({ length: 4000 }, (_, n) => n / 4000);
  const right = left.map((v) => -v / 2);

  test("gives all of its sound, mixed to one channel, at the speed of life, then closes", async () => {
    const { pace, pass } = scriptedPace();
    const events: SoundEvent[] = [];
    recordingSource(stereo(left, right), "practice", pace).open(null, (event) => events.push(event));
    pass(100);
    expect(soundIn(events).length).toBe(800);
    pass(1000);
    await Promise.resolve();
    expect(soundIn(events)).toEqual([...left.map((v, n) => (v + (right[n] ?? 0)) / 2)]);
    expect([events[0]?.type, events.at(-1)?.type]).toEqual(["opened", "closed"]);
  });

  test("says nothing more once closed", async () => {
    const { pace, pass } = scriptedPace();
    const events: SoundEvent[] = [];
    const open = recordingSource(stereo(left, right), "practice", pace).open(null, (event) => events.push(event));
    pass(100);
    open.close();
    await Promise.resolve();
    pass(1000);
    expect(events.at(-1)).toEqual({ type: "closed" });
    expect(soundIn(events).length).toBe(800);
  });
});
