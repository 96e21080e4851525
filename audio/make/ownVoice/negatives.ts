/**
 * Makes public/own-voice: what the phrase model sums up of speech that is none of the phrases, against which thresholds are
 * set again when an artist teaches it their voice. Voices of the training set only; run it again after every new model.
 * `npm run negatives` for every language, `-- es` for one. Needs Debian's espeak-ng and flite.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { ClipManifest } from "../../../src/announcements/clips";
import { addressWords, commandIds } from "../../../src/intent/phrases";
import { parse } from "../../../src/intent/spoken";
import { type PhraseLanguage, phraseLanguages, wordings } from "../../../src/intent/wording";
import { readWav, resample } from "../../../src/recogniser";
import { folderFor } from "../../../src/recogniser/engine/modelFolder";
import { PhraseNet } from "../../../src/recogniser/network/phraseNet";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { headOf } from "../../../src/recogniser/network/weightsOf";
import { Joint } from "../../../src/recogniser/ownVoice/joint";
import { outputsOf } from "../../../src/recogniser/ownVoice/learn";
import { overMachine } from "../../../src/recogniser/ownVoice/machineNoise";
import { type NegativesFile, toBytes } from "../../../src/recogniser/ownVoice/negativesFile";
import { momentsOf } from "../../../src/recogniser/ownVoice/summaries";
import { seededRandom } from "../../../src/rehearsal/random";

const clips = 320;
const [hardest, anyOf] = [1200, 500];
/** None of those set aside in audio/make/held-out.json. */
const variants = ["Alex", "Alicia", "Andy", "Lee", "Michael", "Storm", "adam", "anika", "f1", "f2", "f4", "m3"];
const accents: Readonly<Record<PhraseLanguage, readonly string[]>> = {
  en: ["en-gb", "en-us", "en-gb-scotland", "en-029"],
  es: ["es", "es-419"],
};

/** Talk, announcements, bare commands, an address with something else behind it: near, and none of ours. */
function textsIn(language: PhraseLanguage, random: () => number): () => string {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const { addresses, commands } = wordings[language];
  const address = () => addresses[pick(addressWords)];
  const words = [...new Set(commandIds.flatMap((id) => commands[id].split(" ")))];
  const manifest = ClipManifest.parse(JSON.parse(readFileSync(`public/clips/${language}.json`, "utf8")));
  const sentences = Object.keys(manifest.clips).filter((text) => text.split(" ").length > 3);
  const kinds = [
    () => pick(sentences),
    () => commands[pick(commandIds)],
    () => `${address()} ${pick(words)} ${pick(words)}`,
    () => `${address()} ${pick(words)} ${pick(words)} ${pick(words)}`,
    () => `${address()} ${commands[pick(commandIds)].split(" ").slice(0, -1).join(" ")}`,
    () => `${language === "en" ? "the" : "la"} ${address()} ${pick(words)}`,
  ];
  const text = (): string => {
    const made = pick(kinds)();
    return parse(made) === null ? made : text();
  };
  return text;
}

function spokenBy(language: PhraseLanguage, words: string, random: () => number): Float32Array {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const path = "out/negative.wav";
  if (language !== "en" || random() < 0.8) {
    const voice = `${pick(accents[language])}+${pick(variants)}`;
    execFileSync("espeak-ng", ["-v", voice, "-s", String(140 + Math.floor(60 * random())), "-w", path, words]);
  } else execFileSync("flite", ["-voice", "awb", "-t", words, "-o", path]);
  const read = readWav(readFileSync(path));
  if (!read.ok) throw new Error(read.message);
  const sound = resample(read.sound.samples, read.sound.rateHz);
  return random() < 0.5 ? sound : overMachine(sound, 5 + 15 * random(), Math.floor(1e6 * random()));
}

async function make(language: PhraseLanguage): Promise<void> {
  const loaded = await shippedModel(new URL(`../../../public/voice/${folderFor(language)}`, import.meta.url));
  if (!loaded.ok) throw new Error(loaded.message);
  const { model } = loaded;
  const random = seededRandom(23);
  const text = textsIn(language, random);
  const net = new PhraseNet(model);
  const joint = new Joint(headOf(model), outputsOf(model));
  const all = Array.from({ length: clips }, () => momentsOf(net, spokenBy(language, text(), random)))
    .flat()
    .map(({ summary }) => {
      joint.see(summary);
      return { summary, near: 1 - joint.none };
    })
    .sort((a, b) => b.near - a.near);
  const rest = all.slice(hardest).filter(() => random() < anyOf / Math.max(1, all.length - hardest));
  const kept = [...all.slice(0, hardest), ...rest].map(({ summary }) => summary);
  const file: NegativesFile = {
    format: "gloveside-negatives/1",
    model: model.digest,
    count: kept.length,
    inputs: kept[0]?.length ?? 0,
    note: `The ${hardest} moments of ${all.length} that came nearest to a phrase, and ${rest.length} others; synthetic voices of the training set.`,
  };
  const folder = `public/own-voice/${folderFor(language)}`;
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${folder}negatives.json`, `${JSON.stringify(file, null, 2)}\n`);
  writeFileSync(`${folder}negatives.bin`, toBytes(kept));
  console.log(`${language}: ${kept.length} summaries, ${kept.length * file.inputs} bytes`);
}

mkdirSync("out", { recursive: true });
const asked = process.argv[2];
for (const language of phraseLanguages) if (asked === undefined || asked === language) await make(language);
