/**
 * Makes public/own-voice: what the phrase model sums up of speech that is none of the phrases, against which thresholds are
 * set again when an artist teaches it their voice. Voices of the training set only; run it again after every new model.
 * `npm run negatives`. Needs Debian's espeak-ng and flite.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { ClipManifest } from "../../../src/announcements/clips";
import { addressWords, commandIds, commands } from "../../../src/intent/phrases";
import { parse } from "../../../src/intent/spoken";
import { readWav, resample } from "../../../src/recogniser";
import { PhraseNet } from "../../../src/recogniser/network/phraseNet";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { headOf } from "../../../src/recogniser/network/weightsOf";
import { Joint } from "../../../src/recogniser/ownVoice/joint";
import { outputsOf } from "../../../src/recogniser/ownVoice/learn";
import { overMachine } from "../../../src/recogniser/ownVoice/machineNoise";
import { type NegativesFile, toBytes } from "../../../src/recogniser/ownVoice/negativesFile";
import { momentsOf } from "../../../src/recogniser/ownVoice/summaries";
import { seededRandom } from "../../../src/rehearsal/random";

const folder = "public/own-voice";
const clips = Number(process.argv[2] ?? 320);
const [hardest, anyOf] = [1200, 500];
/** None of those set aside in audio/make/held-out.json. */
const variants = ["Alex", "Alicia", "Andy", "Lee", "Michael", "Storm", "adam", "anika", "f1", "f2", "f4", "m3"];
const accents = ["en-gb", "en-us", "en-gb-scotland", "en-029"];

const random = seededRandom(23);
const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
const words = [...new Set(commandIds.flatMap((id) => commands[id].split(" ")))];
const manifest = ClipManifest.parse(JSON.parse(readFileSync("public/clips/en.json", "utf8")));
const sentences = Object.keys(manifest.clips).filter((text) => text.split(" ").length > 3);

/** Talk, announcements, bare commands, an address with something else behind it: near, and none of ours. */
function text(): string {
  const kinds = [
    () => pick(sentences),
    () => commands[pick(commandIds)],
    () => `${pick(addressWords)} ${pick(words)} ${pick(words)}`,
    () => `${pick(addressWords)} ${pick(words)} ${pick(words)} ${pick(words)}`,
    () => `${pick(addressWords)} ${commands[pick(commandIds)].split(" ").slice(0, -1).join(" ")}`,
    () => `the ${pick(addressWords)} ${pick(words)}`,
  ];
  const made = pick(kinds)();
  return parse(made) === null ? made : text();
}

function spokenBy(words: string): Float32Array {
  const path = "out/negative.wav";
  if (random() < 0.8) {
    const voice = `${pick(accents)}+${pick(variants)}`;
    execFileSync("espeak-ng", ["-v", voice, "-s", String(140 + Math.floor(60 * random())), "-w", path, words]);
  } else execFileSync("flite", ["-voice", "awb", "-t", words, "-o", path]);
  const read = readWav(readFileSync(path));
  if (!read.ok) throw new Error(read.message);
  const sound = resample(read.sound.samples, read.sound.rateHz);
  return random() < 0.5 ? sound : overMachine(sound, 5 + 15 * random(), Math.floor(1e6 * random()));
}

const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
mkdirSync("out", { recursive: true });
const net = new PhraseNet(model);
const joint = new Joint(headOf(model), outputsOf(model));
const all = Array.from({ length: clips }, () => momentsOf(net, spokenBy(text())))
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
mkdirSync(folder, { recursive: true });
writeFileSync(`${folder}/negatives.json`, `${JSON.stringify(file, null, 2)}\n`);
writeFileSync(`${folder}/negatives.bin`, toBytes(kept));
console.log(`${kept.length} summaries, ${kept.length * file.inputs} bytes`);
