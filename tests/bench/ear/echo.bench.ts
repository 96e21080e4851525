/**
 * The companion's own announcements in the microphone at 0 dB: does it act on them, and is the artist still heard? The
 * shipped clips are played through a loudspeaker and a room of our own making (delay, soft clipping, half a second of decay)
 * and heard by the shipped ear: with nothing done about it, with the words being said guarded, with the echo taken out, and
 * with both. Everything is listened for, which is harder than any session. Also: the artist says no more than the companion's
 * name while it reads out what may be said, which together is a whole phrase. `npm run bench:echo`; with the name of a file at
 * the end, only the last way is tried, which is the app's, and the rows of `npm run bench:voice` are written there.
 */
import { writeFileSync } from "node:fs";
import { clipKey } from "../../../src/announcements/clips";
import { type CommandId, commandIds, commands } from "../../../src/intent/phrases";
import { lingersMs, type PieceInTheAir, sayingNow, stillInTheAir } from "../../../src/intent/sayingNow";
import { Ear, type Heard, type PhraseModel } from "../../../src/recogniser";
import { type Figure, least, most } from "../../../src/recogniser/figures/figure";
import { bootstrapped, poissonUpper } from "../../../src/recogniser/figures/intervals";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { seededRandom } from "../../../src/rehearsal/random";
import { announcements, piecesByText, type Sentence } from "../voice/announcements";
import { heldOutVoices, levelled, phraseOf, rmsOf } from "./heldOut";

const rateHz = 16_000;
const chunk = 1024;
const aloneMinutes = Number(process.argv[2] ?? 12);
const voicesUsed = heldOutVoices.slice(0, Number(process.argv[3] ?? 4));
const rowFile = process.argv[4];

/** Loudspeaker and room: 90 ms on the way, a loudspeaker that is not quite straight, reverberation of 0.3 s. */
function throughTheRoom(played: Float32Array, seed: number): Float32Array {
  const random = seededRandom(seed);
  const taps = Array.from({ length: 90 }, (_, n) => ({
    at: n === 0 ? 0 : Math.floor(random() * 0.3 * rateHz),
    gain: n === 0 ? 1 : random() - 0.5,
  })).map(({ at, gain }) => ({ at, gain: gain * 10 ** ((-3 * at) / (0.3 * rateHz)) }));
  const delay = Math.round(0.09 * rateHz);
  const driven = played.map((x) => Math.tanh(1.5 * x) / 1.5);
  const heard = new Float32Array(played.length);
  for (const { at, gain } of taps) {
    for (let n = delay + at; n < heard.length; n++)
      heard[n] = (heard[n] as number) + gain * (driven[n - delay - at] as number);
  }
  return heard;
}

/** A loudspeaker beside the microphone, in a room that swallows sound: nothing but 90 ms on the way. */
function straight(played: Float32Array): Float32Array {
  const heard = new Float32Array(played.length);
  heard.set(played.subarray(0, played.length - 0.09 * rateHz), 0.09 * rateHz);
  return heard;
}

interface Scene {
  readonly played: Float32Array;
  readonly heard: Float32Array;
  readonly saying: readonly { readonly from: number; readonly to: number; readonly guards: readonly CommandId[] }[];
}

/** Announcements one after the other, with half a second between, until `seconds` are full. */
function scene(sentences: readonly Sentence[], seconds: number, seed: number): Scene {
  const random = seededRandom(seed);
  const played = new Float32Array(Math.round(seconds * rateHz));
  const saying: { from: number; to: number; guards: readonly CommandId[] }[] = [];
  for (let at = rateHz / 2; ; ) {
    const { text, sound } = sentences[Math.floor(random() * sentences.length)] as Sentence;
    if (at + sound.length > played.length) break;
    played.set(levelled(sound, 0.08), at);
    saying.push({ from: at, to: at + sound.length + 0.4 * rateHz, guards: sayingNow(text, "en") });
    at += sound.length + rateHz / 2;
  }
  const echo = throughTheRoom(played, seed);
  const loud = echo.filter((_, n) => saying.some(({ from, to }) => n >= from && n < to - 0.4 * rateHz));
  const gain = 0.05 / rmsOf(loud);
  const noise = seededRandom(seed + 1);
  return { played, heard: echo.map((x) => gain * x + 0.0005 * (noise() - 0.5)), saying };
}

const ways = ["nothing done", "words guarded", "echo taken out", "both"] as const;

function hear(model: PhraseModel, { played, heard, saying }: Scene, way: (typeof ways)[number]): readonly Heard[] {
  const ear = new Ear({ model, address: "station" });
  ear.allow(commandIds);
  const isGuarded = way === "words guarded" || way === "both";
  const isCancelled = way === "echo taken out" || way === "both";
  const all: Heard[] = [];
  for (let at = 0; at < heard.length; at += chunk) {
    if (isGuarded) ear.guard(saying.find(({ from, to }) => at >= from && at < to)?.guards ?? null);
    const part = heard.slice(at, at + chunk);
    all.push(...ear.listen(part, isCancelled ? played.slice(at, at + part.length) : null));
  }
  return [...all, ...ear.finish()];
}

const actedOn = (all: readonly Heard[]): readonly Heard[] => all.filter(({ kind }) => kind === "understood");

/** What the list of choices may hold, in its order. */
const choices: readonly (readonly CommandId[])[] = [
  ["done", "back", "skip", "undo"],
  ["done", "applied", "wiped", "back", "skip"],
  ["back", "skip", "undo", "problem", "stopEarly"],
];
const betweenPieces = 0.1 * rateHz;

/** "You may say: ..." and after `nameAt` samples of it the address word by a held-out voice, the companion as loud. */
function choicesRead(list: readonly CommandId[], name: Float32Array, nameAt: number): Scene {
  const pieces = ["You may say:", ...list.map((id) => commands[id])];
  const sounds = pieces.map((text) => {
    const sound = clips.get(clipKey(text));
    if (sound === undefined) throw new Error(`no clip says "${text}"`);
    return sound;
  });
  const before = rateHz;
  const length = sounds.reduce((sum, sound) => sum + sound.length + betweenPieces, 2 * before);
  const played = new Float32Array(length);
  const saying: { from: number; to: number; guards: readonly CommandId[] }[] = [];
  let inTheAir: readonly PieceInTheAir[] = [];
  let at = before;
  for (const [n, sound] of sounds.entries()) {
    played.set(sound, at);
    inTheAir = stillInTheAir(inTheAir, pieces[n] ?? "", (1000 * at) / rateHz);
    const guards = sayingNow(inTheAir.map(({ text }) => text).join(" "), "en");
    const after = n === sounds.length - 1 ? (lingersMs * rateHz) / 1000 : betweenPieces;
    saying.push({ from: at, to: at + sound.length + after, guards });
    at += sound.length + betweenPieces;
  }
  const echo = straight(played);
  const gain = 0.05 / rmsOf(echo.subarray(before, at));
  const noise = seededRandom(nameAt + 2);
  const heard = echo.map((x) => gain * x + 0.0005 * (noise() - 0.5));
  for (const [k, x] of name.entries()) heard[before + nameAt + k] = (heard[before + nameAt + k] ?? 0) + x;
  return { played, heard, saying };
}

const loaded = await shippedModel();
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;
const known = commandIds.filter((id) => model.file.outputs.commandIds.includes(id));
const sentences = announcements();
const clips = piecesByText();
const [nameBy] = voicesUsed;
if (nameBy === undefined) throw new Error("no held-out voice is installed");
/** "Station", cut out of a whole phrase: its first 0.55 s. */
const name = phraseOf(nameBy, "station", "done").slice(0, 0.55 * rateHz);
const nameAlone = choices.flatMap((list) =>
  Array.from({ length: 48 }, (_, n) => choicesRead(list, name, Math.round(n * 0.1 * rateHz))),
);

console.log(
  `Own announcements at 0 dB: ${aloneMinutes} min alone; then ${known.length} phrases by each of ${voicesUsed.length} held-out voices over them.`,
);
console.log(
  "| way | false actions | an hour, 95 % upper bound | heard % (95 %) | wrong | its name alone: acted | asked |",
);
console.log("|---|---|---|---|---|---|---|");
const alone = scene(sentences, aloneMinutes * 60, 11);
const over = voicesUsed.map((voice, v) => {
  const spacingSec = 3.4;
  const warmUpSec = 12;
  const base = scene(sentences, warmUpSec + known.length * spacingSec, 100 + v);
  const heard = base.heard.slice();
  const asked = known.map((command, n) => {
    const from = Math.round((warmUpSec + n * spacingSec) * rateHz);
    const sound = phraseOf(voice, "station", command);
    for (const [k, x] of sound.entries()) heard[from + k] = (heard[from + k] ?? 0) + x;
    return { command, fromMs: (from * 1000) / rateHz, toMs: ((from + sound.length) * 1000) / rateHz + 900 };
  });
  return { base: { ...base, heard }, asked };
});
for (const way of rowFile === undefined ? ways : (["both"] as const)) {
  const actions = actedOn(hear(model, alone, way));
  const byVoice = over.map(({ base, asked }) => {
    const found = actedOn(hear(model, base, way));
    return asked.map(({ command, fromMs, toMs }) => {
      const within = found.filter(({ atMs }) => atMs >= fromMs && atMs <= toMs);
      const wrong = within.filter((one) => one.kind === "understood" && one.command !== command).length;
      return { isHeard: within.length > wrong, wrong };
    });
  });
  const wrong = byVoice.flat().reduce((sum, one) => sum + one.wrong, 0);
  const [mean, low, high] = bootstrapped(byVoice.map((one) => one.map(({ isHeard }) => (isHeard ? 1 : 0))));
  const bound = poissonUpper(actions.length) / (aloneMinutes / 60);
  const named = rowFile === undefined ? nameAlone.map((one) => hear(model, one, way)) : [];
  const nameOf = (kind: Heard["kind"]) => named.filter((all) => all.some((one) => one.kind === kind)).length;
  if (rowFile !== undefined) {
    const rows: readonly Figure[] = [
      {
        what: "own announcements at 0 dB, false actions",
        of: `${actions.length} in ${(aloneMinutes / 60).toFixed(2)} h`,
        ...{ value: actions.length, low: null, high: null, unit: "", bar: most(0), beside: null },
      },
      {
        what: "own announcements at 0 dB, commands heard",
        of: `${byVoice.flat().length} clips, ${voicesUsed.length} speakers`,
        ...{ value: 100 * mean, low: 100 * low, high: 100 * high, unit: "%", bar: least(90), beside: null },
      },
    ];
    writeFileSync(rowFile, JSON.stringify(rows));
  }
  console.log(
    `| ${way} | ${actions.length} in ${aloneMinutes} min | ${bound.toFixed(1)} | ${(100 * mean).toFixed(1)} (${(100 * low).toFixed(1)}–${(100 * high).toFixed(1)}) | ${wrong} | ${nameOf("understood")} of ${nameAlone.length} | ${nameOf("unsure")} |`,
  );
}
