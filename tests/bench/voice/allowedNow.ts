/**
 * `npx tsx tests/bench/voice/allowedNow.ts`: what whole sessions of the bundled protocols listen for, and for what share
 * of their time, into audio/make/allowed-now.json. Thresholds and benchmarks are measured with these sets.
 */
import { writeFileSync } from "node:fs";
import { act, type Pace } from "../../../src/rehearsal/act";
import { ordinaryDay } from "../../../src/rehearsal/artist";
import { shippedClips } from "../../../src/rehearsal/clipManifest";
import { open } from "../../../src/rehearsal/opening";
import { seededRandom } from "../../../src/rehearsal/random";
import { enterRoom } from "../../../src/rehearsal/room";
import { silentAir } from "../../../src/rehearsal/silentAir";
import { bundledProtocols } from "../../../src/session/protocols";

/** Rarer than this and a set is left out: it would be measured on next to nothing. */
const leastShare = 0.001;
const pace: Pace = { leadInMs: 0, marginMs: 0, gapMs: [600, 1_200], clearMs: 1_000, handsOn: true };
const manifest = await shippedClips();
const times = new Map<string, number>();

for (const protocol of bundledProtocols) {
  const opened = await open({
    protocol,
    brisk: false,
    address: "station",
    startMs: Date.UTC(2026, 10, 25, 10),
    offsetMin: 0,
    zone: "UTC",
    seed: "allowed",
    phraseModel: null,
    appVersion: "0.0.0",
  });
  const room = await enterRoom(opened, manifest);
  const { rateHz, say, take } = silentAir();
  const counted = (count: number): Float32Array => {
    const now = [...room.companion.listenedFor].sort().join(",");
    times.set(now, (times.get(now) ?? 0) + count);
    return take(count);
  };
  await act(room, { rateHz, say, take: counted }, ordinaryDay, pace, seededRandom(1));
}

/** The rehearsed artist tattoos for minutes, a real one for hours: so the work itself gets this share of the time. */
const workShare = 0.6;
const isWork = (commands: string) => commands.includes("moreInk");
const lengthOf = (some: (commands: string) => boolean) =>
  [...times].reduce((sum, [commands, count]) => sum + (some(commands) ? count : 0), 0);
const [work, rest] = [lengthOf(isWork), lengthOf((commands) => !isWork(commands))];
const shareOf = (commands: string, count: number) =>
  isWork(commands) ? (workShare * count) / work : ((1 - workShare) * count) / rest;
const sets = [...times]
  .map(([commands, count]) => ({
    share: Math.round(1e4 * shareOf(commands, count)) / 1e4,
    commands: commands.split(","),
  }))
  .filter(({ share, commands }) => share >= leastShare && commands[0] !== "")
  .sort((a, b) => b.share - a.share);
const target = new URL("../../../audio/make/allowed-now.json", import.meta.url);
writeFileSync(target, `[\n${sets.map((each) => ` ${JSON.stringify(each)}`).join(",\n")}\n]\n`);
console.log(`${sets.length} sets, ${sets.map(({ commands }) => commands.length).join(" ")} commands`);
