/** What another station's companion says: the clips that are shipped, each at 16 kHz. */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { type Clip, ClipManifest } from "../../../src/announcements/clips";
import { kept } from "./kept";

export interface Sentence {
  readonly text: string;
  readonly sound: Float32Array;
}

const rateHz = 16_000;

/** Every clip that is more than a word or two. Needs ffmpeg. */
export const announcements = (): readonly Sentence[] =>
  sentencesOf((clip) => clip.durationMs > 700 && !clip.file.includes("words"));

/** Every clip, words too, by what it says. Needs ffmpeg. */
export const piecesByText = (): ReadonlyMap<string, Float32Array> =>
  new Map(sentencesOf(() => true).map(({ text, sound }) => [text, sound]));

function sentencesOf(wanted: (clip: Clip) => boolean): readonly Sentence[] {
  const manifest = ClipManifest.parse(JSON.parse(readFileSync("public/clips/en.json", "utf8")));
  const files = new Map<string, Float32Array>();
  const decoded = (file: string): Float32Array => {
    const known = files.get(file);
    if (known) return known;
    const path = `public/clips/${file}`;
    const key = createHash("sha256").update(readFileSync(path)).digest("hex").slice(0, 24);
    const args = ["-v", "error", "-i", path, "-ar", "16000", "-ac", "1", "-f", "f32le", "-"];
    const sound = kept(`clips/${key}`, () => {
      const bytes = execFileSync("ffmpeg", args, { maxBuffer: 2 ** 30 });
      return new Float32Array(new Uint8Array(bytes).buffer);
    });
    files.set(file, sound);
    return sound;
  };
  return Object.entries(manifest.clips)
    .filter(([, clip]) => wanted(clip))
    .map(([text, clip]) => ({
      text,
      sound: decoded(clip.file).slice(
        (clip.startMs * rateHz) / 1000,
        ((clip.startMs + clip.durationMs) * rateHz) / 1000,
      ),
    }));
}
