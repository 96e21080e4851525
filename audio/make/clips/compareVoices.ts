/**
 * Which synthesiser is understood best beside a machine: pocketsphinx with its general English model writes down
 * what it hears, clean and under a modelled buzz. A stand-in for ears; it only ranks. `npm run clips:compare`.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { en } from "../../../src/announcements/en";
import { sayClock } from "../../../src/announcements/sayClock";
import { sayDeviation, sayNotKept, sayRefused } from "../../../src/announcements/sayNotice";
import { clockMoments, textOf, type Utterance } from "../../../src/announcements/utterance";
import { DeviationCode, RefusalReason } from "../../../src/session/fact";
import { synthesise, voices } from "./voices";
import { readWav, type Sound, writeWav } from "./wav";

const rateHz = 16_000;
const conditions = [Number.POSITIVE_INFINITY, 15] as const;
const model = "/usr/share/pocketsphinx/model/en-us";

const chair = { id: "chair", calledAs: { en: "chair" } };
const utterances: readonly Utterance[] = [
  ...clockMoments.map((moment) => sayClock(en, moment, [chair])),
  ...RefusalReason.options.map((reason) => sayRefused(en, reason, null)),
  ...DeviationCode.options.map((code) => sayDeviation(en, code, chair)),
  sayNotKept(en, "storageFull"),
];
/** Every third: the judge is slow. */
const texts = utterances.map(textOf).filter((_, place) => place % 3 === 0);

/** A rotary machine: 110 Hz and its harmonics with a wandering pitch, over pink-like noise. Deterministic. */
function buzz(length: number): Float32Array {
  let seed = 1;
  const random = () => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
    return seed / 2 ** 31 - 1;
  };
  let phase = 0;
  let slow = 0;
  return Float32Array.from({ length }, (_, i) => {
    phase += (2 * Math.PI * (110 + 3 * Math.sin(i / 9_000))) / rateHz;
    slow = 0.97 * slow + 0.03 * random();
    let tone = 0;
    for (let h = 1; h <= 30; h++) tone += Math.sin(h * phase) / h ** 0.8;
    return tone + 12 * slow + 0.4 * random();
  });
}

const power = (samples: Float32Array): number => samples.reduce((sum, x) => sum + x * x, 0) / samples.length;

function mixed(speech: Float32Array, ratioDb: number): Sound {
  const padded = new Float32Array(speech.length + rateHz);
  padded.set(speech, rateHz / 2);
  const noise = buzz(padded.length);
  const gain = Math.sqrt(power(speech) / power(noise) / 10 ** (ratioDb / 10));
  const sum = padded.map((x, i) => x + gain * (noise[i] ?? 0));
  const peak = sum.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  return { rateHz, samples: sum.map((x) => (0.7 * x) / peak) };
}

/** Word errors by edit distance. */
function wordErrors(said: readonly string[], heard: readonly string[]): number {
  let row = heard.map((_, j) => j + 1);
  row.unshift(0);
  said.forEach((word, i) => {
    const next = [i + 1];
    heard.forEach((other, j) => {
      next.push(Math.min((row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1, (row[j] ?? 0) + (word === other ? 0 : 1)));
    });
    row = next;
  });
  return row.at(-1) ?? 0;
}

const words = (text: string): string[] => text.toLowerCase().match(/[a-z']+/g) ?? [];

for (const voice of voices) {
  const folder = mkdtempSync(join(tmpdir(), "voices-"));
  const paths = synthesise(voice, texts, folder);
  const speech = paths.map((path) => {
    const at16k = path.replace(/\.wav$/, ".16k.wav");
    execFileSync("ffmpeg", ["-v", "error", "-y", "-i", path, "-ar", String(rateHz), "-ac", "1", at16k]);
    return readWav(at16k).samples;
  });
  const secondsEach = speech.reduce((sum, samples) => sum + samples.length, 0) / rateHz / speech.length;
  const rates = conditions.map((ratioDb) => {
    speech.forEach((samples, i) => {
      writeWav(join(folder, `n${i}.wav`), mixed(samples, ratioDb));
    });
    writeFileSync(join(folder, "list"), texts.map((_, i) => `n${i}\n`).join(""));
    const options = {
      "-hmm": `${model}/en-us`,
      "-lm": `${model}/en-us.lm.bin`,
      "-dict": `${model}/cmudict-en-us.dict`,
    };
    const files = { "-ctl": join(folder, "list"), "-cepdir": folder, "-cepext": ".wav", "-hyp": join(folder, "hyp") };
    const quick = {
      "-fwdflat": "no",
      "-bestpath": "no",
      "-maxhmmpf": "3000",
      "-maxwpf": "10",
      "-topn": "2",
      "-ds": "2",
    };
    const flags = Object.entries({ ...options, ...files, ...quick, "-adcin": "yes", "-adchdr": "44" }).flat();
    execFileSync("pocketsphinx_batch", flags, { stdio: "ignore" });
    const lines = execFileSync("cat", [join(folder, "hyp")], { encoding: "utf8" }).split("\n");
    const heard = texts.map((_, i) => words((lines[i] ?? "").replace(/\(n\d+ -?\d+\)\s*$/, "")));
    const errors = texts.reduce((sum, text, i) => sum + wordErrors(words(text), heard[i] ?? []), 0);
    return (100 * errors) / texts.reduce((sum, text) => sum + words(text).length, 0);
  });
  const shown = conditions.map(
    (db, i) => `${db === Number.POSITIVE_INFINITY ? "clean" : `${db} dB`} ${rates[i]?.toFixed(1)} %`,
  );
  console.log(
    `${voice.padEnd(14)} ${texts.length} texts, ${secondsEach.toFixed(2)} s each, word errors: ${shown.join(", ")}`,
  );
  rmSync(folder, { recursive: true });
}
