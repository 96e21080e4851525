/** Brings rendered files to one rate and takes the rumble off, many in one run of ffmpeg: starting it costs most. */
import { execFileSync } from "node:child_process";

const perRun = 60;
/** Below the lowest voice; a small loudspeaker gains nothing from it. */
const rumbleHz = 100;

/** @returns one path for each, in order: mono, 16 bits, `rateHz`. */
export function evened(paths: readonly string[], rateHz: number): readonly string[] {
  const made = paths.map((path) => path.replace(/\.wav$/, ".even.wav"));
  for (let from = 0; from < paths.length; from += perRun) {
    const batch = paths.slice(from, from + perRun);
    const inputs = batch.flatMap((path) => ["-i", path]);
    const outputs = batch.flatMap((_, place) => [
      ...["-map", `${place}:a`, "-af", `highpass=f=${rumbleHz}`, "-ar", String(rateHz), "-ac", "1"],
      made[from + place] ?? "",
    ]);
    execFileSync("ffmpeg", ["-v", "error", "-y", ...inputs, ...outputs]);
  }
  return made;
}
