/** The whole chain on one recording: rehearsed, compared with what was said, verified, and verified again when altered. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { appVersion } from "../../../src/cli/version";
import { writeWhole } from "../../../src/cli/writeWhole";
import { passes, verifyRecord } from "../../../src/export";
import { readWav, type Sound } from "../../../src/recogniser";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { shippedClips } from "../../../src/rehearsal/clipManifest";
import { type Comparison, compare } from "../../../src/rehearsal/compare";
import { open } from "../../../src/rehearsal/opening";
import { type Rehearsal, rehearse } from "../../../src/rehearsal/rehearse";
import { transcript } from "../../../src/rehearsal/story";
import { type Wholeness, wholenessOf } from "../../../src/rehearsal/whole";
import { protocolById } from "../../../src/session/protocols";
import type { Timeline } from "./record";

export interface Checked {
  readonly rehearsal: Rehearsal;
  readonly compared: Comparison;
  readonly whole: Wholeness;
  readonly recordPath: string;
}

/** Invented, and always the same: a rehearsal's record repeats byte for byte. */
const startMs = Date.UTC(2026, 10, 25, 10, 0);

export const soundOf = (path: string): Sound => {
  const read = readWav(readFileSync(path));
  if (!read.ok) throw new Error(`${path}: ${read.message}`);
  return read.sound;
};

/** @param folder Where record.json and transcript.txt go. */
export async function check(sound: Sound, timeline: Timeline, folder: string): Promise<Checked> {
  const protocol = protocolById(timeline.protocol);
  if (!protocol) throw new Error(`${timeline.protocol} is not a bundled protocol`);
  const model = await shippedModel();
  if (!model.ok) throw new Error(model.message);
  const opened = await open({
    protocol,
    brisk: timeline.brisk,
    address: "station",
    startMs,
    offsetMin: 0,
    zone: "UTC",
    seed: "demo",
    phraseModel: model.model.file.binary.sha256,
    appVersion: appVersion(),
  });
  const rehearsal = await rehearse(sound, model.model, opened, await shippedClips());
  const { sealed, story } = rehearsal;
  if (!sealed.ok) throw new Error(sealed.message);
  const written = await writeWhole(folder, { "record.json": sealed.text, "transcript.txt": transcript(story) });
  if (!written.ok) throw new Error(written.words);
  const facts = sealed.record.entries.map(({ fact }) => fact);
  return {
    rehearsal,
    compared: compare(timeline.labels, story),
    whole: wholenessOf(protocol, facts),
    recordPath: join(folder, "record.json"),
  };
}

export const isFaultless = ({ compared, whole }: Checked): boolean =>
  compared.missed.length === 0 &&
  compared.wrong.length === 0 &&
  whole.missedSteps.length === 0 &&
  whole.refused.length === 0 &&
  whole.unready.length === 0 &&
  whole.isClosed;

/** @returns whether the record holds as it is, and whether it still does with one bit of one byte turned. */
export async function verifyTwice(path: string, at: number): Promise<{ asItIs: boolean; altered: boolean }> {
  const bytes = new Uint8Array(readFileSync(path));
  const asItIs = passes(await verifyRecord(bytes));
  const place = at % bytes.length;
  bytes[place] = (bytes[place] ?? 0) ^ 1;
  return { asItIs, altered: passes(await verifyRecord(bytes)) };
}
