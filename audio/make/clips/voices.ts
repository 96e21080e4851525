/** Debian's free synthesisers, one text to one WAV file each. Text comes from our own files, never from outside. */
import { execFileSync } from "node:child_process";
import { join } from "node:path";

export const voices = ["festival-slt", "flite-slt", "espeak-f3", "espeak-gb-f2", "espeak-es-f2"] as const;
export type Voice = (typeof voices)[number];

/** Words per minute for espeak-ng; the others speak at their own pace. */
const espeakWordsPerMinute = "150";
const espeakAccents = { "espeak-f3": "en-us+f3", "espeak-gb-f2": "en-gb+f2", "espeak-es-f2": "es-419+f2" } as const;

/** @returns one path for each text, in order. */
export function synthesise(voice: Voice, texts: readonly string[], folder: string): readonly string[] {
  const paths = texts.map((_, place) => join(folder, `${voice}-${String(place).padStart(4, "0")}.wav`));
  const each = texts.map((text, place) => ({ text, path: paths[place] ?? "" }));
  if (voice === "festival-slt") festival(each);
  else if (voice === "flite-slt") {
    for (const { text, path } of each) execFileSync("flite", ["-voice", "slt", "-t", text, path]);
  } else {
    for (const { text, path } of each)
      execFileSync("espeak-ng", ["-v", espeakAccents[voice], "-s", espeakWordsPerMinute, "-w", path, text]);
  }
  return paths;
}

/** One process for all: loading the voice takes longer than speaking. */
function festival(each: readonly { text: string; path: string }[]): void {
  const lines = each.map(
    ({ text, path }) => `(utt.save.wave (utt.synth (Utterance Text ${quoted(text)})) ${quoted(path)} 'riff)`,
  );
  execFileSync("festival", ["--pipe"], { input: ["(voice_cmu_us_slt_arctic_hts)", ...lines].join("\n") });
}

const quoted = (text: string): string => `"${text.replace(/[\\"]/g, "\\$&")}"`;
