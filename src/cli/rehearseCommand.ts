/** `gloveside rehearse`: a recorded session in, its sealed record and its transcript out. */
import { join } from "node:path";
import { figureLines } from "../rehearsal/figures";
import { rehearse } from "../rehearsal/rehearse";
import { transcript } from "../rehearsal/story";
import { answer, refuse } from "../sums/answer";
import { type Options, type Out, runCommand } from "../sums/commandLine";
import { readRehearsalOptions, rehearsalOptions } from "./rehearseOptions";
import { writeWhole } from "./writeWhole";

export const rehearseHelp = `
Usage: gloveside rehearse FILE.wav --protocol ID --out DIR [options]

Runs a recorded session through the recogniser, the chart, the announcements and the log that the
app uses; the sound is the clock. Writes DIR/record.json, sealed, and DIR/transcript.txt: what was
heard, said and kept, and when. Prints what it came to.

  --protocol ID     a bundled protocol (cartridgeMachine, autoclavedTubes, conventionBooth) or a
                    protocol file, PATH.json
  --out DIR         made where it is missing
  --brisk           the brisk mode: no cautions, harmless checks read together
  --address WORD    address word listened for: station (default), workbench
  --at TIME         wall time at the beginning of the sound, 2026-11-25T10:00:00+00:00; default now
  --zone ZONE       IANA zone written into the session, default this machine's
  --seed TEXT       the same ids and the same signing key each time, so that with --at the record
                    repeats byte for byte; whoever knows the seed has the key, so it proves nothing
  --model FOLDER    folder with model.json and model.bin
  --json            the figures as one JSON document
  --help            this text

Exit codes: 0 written, 2 refused or not understood.
`;

export function rehearseCommand(argv: readonly string[], out: Out, now: () => number = Date.now): Promise<number> {
  return runCommand(argv, out, { help: rehearseHelp, options: rehearsalOptions, find: (given) => run(given, now()) });
}

async function run(given: Options, nowMs: number) {
  const read = await readRehearsalOptions(given, nowMs);
  if (!read.ok) return read;
  const { sound, model, opened, manifest, folder } = read.value;
  const { sealed, story, figures, soundMs, isClosed } = await rehearse(sound, model, opened, manifest);
  if (!sealed.ok) return refuse("not-sealed", sealed.message);
  const written = await writeWhole(folder, { "record.json": sealed.text, "transcript.txt": transcript(story) });
  if (!written.ok) return refuse("not-written", written.words);
  const lines = [
    `${(soundMs / 1000).toFixed(1)} s of sound, ${sealed.record.entries.length} facts kept and sealed`,
    ...figureLines(figures),
    isClosed ? "the session was closed" : "the session was not closed: the recording ended before",
    `written: ${join(folder, "record.json")}, ${join(folder, "transcript.txt")}`,
  ];
  return answer({
    json: { soundMs, closed: isClosed, facts: sealed.record.entries.length, ...figures },
    lines,
    exitCode: 0 as const,
  });
}
