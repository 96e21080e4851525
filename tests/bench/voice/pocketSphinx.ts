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
  writeFileSync(grammar, `#JSGF V1.0;\ngrammar phrases;\npublic <phrase> = ${phrases.map(plain).join(" |\n ")};\n`);
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
