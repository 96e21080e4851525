/**
 * Debian's PocketSphinx on the same sound: a grammar of the same phrases, the US English model it ships. The referee of
 * the benchmark: an excellent ear with no judgement of its own, for a grammar always finds one of its phrases.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { sampleRateHz, writeWav } from "../../../src/recogniser";

const model = "/usr/share/pocketsphinx/model/en-us";

export function hasPocketSphinx(): boolean {
  try {
    execFileSync("pocketsphinx_batch", [], { stdio: "ignore" });
    return true;
  } catch (error) {
    return !(error instanceof Error && "code" in error && error.code === "ENOENT");
  }
}

const plain = (words: string) => words.toLowerCase().replaceAll("colour", "color");

/** @returns for each sound, the index into `phrases` of what was heard, or -1. */
export function pocketSphinxHears(
  sounds: readonly Float32Array[],
  phrases: readonly string[],
  folder: string,
): readonly number[] {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const grammar = join(folder, "phrases.gram");
  writeFileSync(grammar, grammarOf(phrases));
  const names = sounds.map((sound, n) => {
    const name = String(n).padStart(5, "0");
    writeFileSync(join(folder, `${name}.wav`), writeWav(sound, sampleRateHz));
    return name;
  });
  writeFileSync(join(folder, "list"), `${names.join("\n")}\n`);
  const speech = ["-hmm", join(model, "en-us"), "-dict", join(model, "cmudict-en-us.dict"), "-jsgf", grammar];
  const files = ["-ctl", join(folder, "list"), "-cepdir", folder, "-cepext", ".wav", "-adcin", "yes", "-adchdr", "44"];
  execFileSync("pocketsphinx_batch", [...speech, ...files, "-hyp", join(folder, "heard"), "-logfn", "/dev/null"], {
    stdio: "ignore",
  });
  const heard = new Map(
    readFileSync(join(folder, "heard"), "utf8")
      .split("\n")
      .map((line) => /^(.*)\((\d+) -?\d+\)$/.exec(line))
      .flatMap((match) => (match ? [[match[2], match[1]?.trim()] as const] : [])),
  );
  const known = phrases.map(plain);
  return names.map((name) => known.indexOf(heard.get(name) ?? ""));
}

/** @returns how often the program that listens on and on, cutting at pauses, heard one of the phrases in a long sound. */
export function pocketSphinxIn(sound: Float32Array, phrases: readonly string[], folder: string): number {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const [grammar, wav] = [join(folder, "phrases.gram"), join(folder, "long.wav")];
  writeFileSync(grammar, grammarOf(phrases));
  writeFileSync(wav, writeWav(sound, sampleRateHz));
  const speech = ["-hmm", join(model, "en-us"), "-dict", join(model, "cmudict-en-us.dict"), "-jsgf", grammar];
  const text = execFileSync("pocketsphinx_continuous", ["-infile", wav, ...speech, "-logfn", "/dev/null"], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "ignore"],
  });
  return text.split("\n").filter((line) => line.trim() !== "").length;
}

const grammarOf = (phrases: readonly string[]): string =>
  `#JSGF V1.0;\ngrammar phrases;\npublic <phrase> = ${phrases.map(plain).join(" |\n ")};\n`;
