/** A whole session of a protocol without any sound: the recorded artist speaks, the companion answers, words are counted. */
import type { ClipManifest } from "../announcements/clips";
import type { Protocol } from "../session/protocol";
import { act, type Label, type Pace } from "./act";
import { ordinaryDay } from "./artist";
import { type Figures, figuresOf } from "./figures";
import { open } from "./opening";
import { seededRandom } from "./random";
import { enterRoom } from "./room";
import { silentAir } from "./silentAir";
import type { StoryLine } from "./story";

export interface SpokenSession {
  readonly labels: readonly Label[];
  readonly story: readonly StoryLine[];
  readonly figures: Figures;
  readonly lengthMs: number;
}

/** An artist who takes the hands-on time of each step and answers as people do. */
const workingPace: Pace = { leadInMs: 0, marginMs: 0, gapMs: [600, 1_200], clearMs: 1_000, handsOn: true };

/** The wall time stands still in the middle of an invented day: nothing of a session hangs on it. */
const startMs = Date.UTC(2026, 10, 25, 10, 0);

export async function spokenSession(
  protocol: Protocol,
  brisk: boolean,
  manifest: ClipManifest,
  pace: Pace = workingPace,
): Promise<SpokenSession> {
  const opened = await open({
    protocol,
    brisk,
    address: "station",
    startMs,
    offsetMin: 0,
    zone: "UTC",
    seed: "words",
    phraseModel: null,
    appVersion: "0.0.0",
  });
  const room = await enterRoom(opened, manifest);
  const labels = await act(room, silentAir(), ordinaryDay, pace, seededRandom(1));
  return { labels, story: room.story, figures: figuresOf(room.story), lengthMs: room.nowMs };
}
