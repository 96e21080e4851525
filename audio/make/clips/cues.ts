/** Renders the earcons of audio/cues as WAV under public/cues: no decoder delay, a few kilobytes each. */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type CueId, cueIds, cues, harmonicsDb, type Pulse, riseShare } from "../../cues/cues";
import { type Sound, writeWav } from "./wav";

const rateHz = 16_000;
const peak = 0.7;
const folder = "public/cues";

/** One pulse: a raised-cosine rise and fall around a steady middle. */
function sounded({ frequencyHz, pulseMs, restMs }: Pulse): Float32Array {
  const length = Math.round((pulseMs / 1_000) * rateHz);
  const rise = length * riseShare;
  const samples = new Float32Array(length + Math.round((restMs / 1_000) * rateHz));
  for (let i = 0; i < length; i++) {
    const edge = Math.min(1, i / rise, (length - i) / rise);
    const envelope = 0.5 - 0.5 * Math.cos(Math.PI * edge);
    const phase = (2 * Math.PI * frequencyHz * i) / rateHz;
    const tone = harmonicsDb.reduce<number>((sum, db, h) => sum + 10 ** (db / 20) * Math.sin((h + 1) * phase), 0);
    samples[i] = envelope * tone;
  }
  return samples;
}

/** 16 kHz mono, peak 0.7. */
export function renderCue(cue: CueId): Sound {
  const parts = cues[cue].map(sounded);
  const joined = Float32Array.from(parts.flatMap((part) => [...part]));
  const most = joined.reduce((top, x) => Math.max(top, Math.abs(x)), 0);
  return { rateHz, samples: joined.map((x) => (peak * x) / most) };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  mkdirSync(folder, { recursive: true });
  for (const cue of cueIds) writeWav(join(folder, `${cue}.wav`), renderCue(cue));
}
