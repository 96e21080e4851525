/** Records a whole session of a bundled protocol: the artist of src/rehearsal in a synthetic voice, beside a machine. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { writeWav } from "../../../src/recogniser";
import { act, type Label, recordedPace } from "../../../src/rehearsal/act";
import { ordinaryDay } from "../../../src/rehearsal/artist";
import { shippedClips } from "../../../src/rehearsal/clipManifest";
import { type Opened, open } from "../../../src/rehearsal/opening";
import { seededRandom } from "../../../src/rehearsal/random";
import { enterRoom } from "../../../src/rehearsal/room";
import { protocolById } from "../../../src/session/protocols";
import { rateHz } from "./artistVoice";
import { recordedAir } from "./recordedAir";

export interface Take {
  readonly protocol: string;
  readonly brisk: boolean;
  readonly snrDb: number | null;
  readonly seed: number;
}

/**
 * The session that is demonstrated and tested: a machine at 15 dB, and the brisk mode, so that it can also be played in
 * real time within twelve minutes.
 */
export const demonstrated: Take = { protocol: "conventionBooth", brisk: true, snrDb: 15, seed: 4 };

export interface Recorded {
  readonly samples: Float32Array;
  readonly labels: readonly Label[];
  readonly opened: Opened;
}

/** What is said and when, beside the recording: the labels that the ear's answers are compared with. */
export interface Timeline extends Take {
  readonly address: string;
  readonly soundMs: number;
  readonly labels: readonly Label[];
}

export const folder = "out/rehearsal";

export async function record(take: Take): Promise<Recorded> {
  const protocol = protocolById(take.protocol);
  if (!protocol) throw new Error(`${take.protocol} is not a bundled protocol`);
  const opened = await open({
    protocol,
    brisk: take.brisk,
    address: "station",
    startMs: Date.UTC(2026, 10, 25, 10, 0),
    offsetMin: 0,
    zone: "UTC",
    seed: "recording",
    phraseModel: null,
    appVersion: "0.0.0",
  });
  const room = await enterRoom(opened, await shippedClips());
  const { snrDb, seed } = take;
  const air = recordedAir({ snrDb, seed, address: opened.input.address, folder: join(folder, "phrases") });
  const labels = await act(room, air, ordinaryDay, recordedPace, seededRandom(seed));
  return { samples: air.recording(), labels, opened };
}

/** "conventionBooth", "conventionBooth.brisk". */
export const nameOf = ({ protocol, brisk }: Take): string => (brisk ? `${protocol}.brisk` : protocol);

export const timelineOf = (take: Take, { samples, labels, opened }: Recorded): Timeline => ({
  ...take,
  address: opened.input.address,
  soundMs: Math.round((samples.length * 1000) / rateHz),
  labels,
});

/** Writes NAME.wav and NAME.timeline.json. @returns their paths. */
export function write(take: Take, recorded: Recorded): { wav: string; timeline: string } {
  mkdirSync(folder, { recursive: true });
  const wav = join(folder, `${nameOf(take)}.wav`);
  const timeline = join(folder, `${nameOf(take)}.timeline.json`);
  writeFileSync(wav, writeWav(recorded.samples, rateHz));
  writeFileSync(timeline, `${JSON.stringify(timelineOf(take, recorded), null, 1)}\n`);
  return { wav, timeline };
}
