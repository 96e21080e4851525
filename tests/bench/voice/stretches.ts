/**
 * Sound in which nobody speaks to this station, in stretches of half a minute, and what the shipped ear makes of it: real
 * people in five languages, talk and near misses by unseen voices, machines, music; a neighbour's commands; another
 * station's announcements. What is listened for changes from stretch to stretch as it does in a session; what has to be
 * read back is read back, and the answer is listened for.
 */
import { type AddressWord, addressWords, type CommandId } from "../../../src/intent/phrases";
import { Ear, type Heard, type PhraseModel, sampleRateHz } from "../../../src/recogniser";
import { Nearness } from "../../../src/recogniser/decision/nearness";
import { type Outcome, outcomeOf } from "../../../src/recogniser/figures/outcome";
import type { PhraseNet } from "../../../src/recogniser/network/phraseNet";
import { seededRandom } from "../../../src/rehearsal/random";
import { anySet, readBackCommands, readBackSet } from "./allowedSets";
import type { Sentence } from "./announcements";
import { inRoom, type Noise } from "./noises";
import { piecesOf } from "./pieces";
import { levelled, rmsOf, said, type TestVoice } from "./voices";

export const kinds = ["people", "talk", "near misses", "machine", "music"] as const;
export type Kind = (typeof kinds)[number] | "neighbour" | "announcements";

export interface Stretch {
  readonly kind: Kind;
  readonly seed: number;
}

/** What stretches are made of. */
export interface Material {
  readonly voices: readonly TestVoice[];
  readonly people: readonly Float32Array[];
  readonly announcements: readonly Sentence[];
  readonly machine: Noise;
  readonly music: Noise | null;
  readonly babble: Noise;
}

export const stretchSec = 30;
const length = stretchSec * sampleRateHz;
const usualRms = 0.05;
/** Ten decibels below where the artist is heard, as they arrive in the microphone: the room is counted. */
const farGain = 10 ** (-10 / 20);
const isFar = ({ kind }: Stretch): boolean => kind === "neighbour" || kind === "announcements";
/** Decibels by which the loudest second of a phrase, which the sound check takes, lies above the whole: median of 616 clips. */
const loudestSecondDb = 1.7;

const randomFor = ({ kind, seed }: Stretch) => seededRandom(seed * 104_729 + kind.length);
/** Times the usual: how near the microphone is. The first draw of its stretch. */
const levelOf = (random: () => number): number => 1 + 2 * random();

/** What the sound check told of the artist whom this microphone belongs to. */
const artistDbIn = (stretch: Stretch): number =>
  20 * Math.log10(usualRms * levelOf(randomFor(stretch))) + loudestSecondDb;

export const addressIn = ({ seed }: Stretch): AddressWord => addressWords[seed % addressWords.length] ?? "station";

/** What is listened for meanwhile. */
export const setIn = ({ seed, kind }: Stretch): readonly CommandId[] => anySet(seededRandom(seed * 31 + kind.length));

/** @returns half a minute at 16 kHz, or null where what it needs is not installed. */
export function soundOf(stretch: Stretch, material: Material): Float32Array | null {
  const { kind, seed } = stretch;
  const random = randomFor(stretch);
  const level = levelOf(random);
  const hiss = (sound: Float32Array) =>
    sound.map((x) => Math.max(-1, Math.min(1, level * x + (random() - 0.5) * 4e-4)));
  if (kind === "machine") return hiss(levelled(material.machine(length, seed)));
  if (kind === "music") return material.music && hiss(levelled(material.music(length, seed)));
  const next = speechOf(stretch, material, random);
  if (next === null) return null;
  const sound = new Float32Array(length);
  for (let at = Math.floor(0.5 * random() * sampleRateHz); at < length; ) {
    const clip = next();
    const gain = 10 ** ((-8 + 12 * random()) / 20);
    const roomed = random() < 0.4 ? inRoom(clip, random) : clip;
    const heard = isFar(stretch) ? levelled(roomed) : roomed;
    for (let n = 0; n < heard.length && at + n < length; n++) {
      sound[at + n] = (sound[at + n] as number) + gain * (heard[n] as number);
    }
    at += clip.length + Math.floor((0.15 + 0.55 * random()) * sampleRateHz);
  }
  const far = isFar(stretch) ? farGain : 1;
  const noise = aroundIt(stretch, material, random);
  const noiseGain = noise ? (usualRms * 10 ** ((-20 * random()) / 20)) / (rmsOf(noise) + 1e-9) : 0;
  return hiss(sound.map((x, n) => far * x + noiseGain * (noise?.[n] ?? 0)));
}

/** One piece of speech after another, each at RMS 0.05. */
function speechOf(
  stretch: Stretch,
  { voices, people, announcements }: Material,
  random: () => number,
): (() => Float32Array) | null {
  const { kind, seed } = stretch;
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  if (kind === "people") return people.length === 0 ? null : () => levelled(pick(people));
  if (kind === "announcements") {
    // It answers to another word, and so never says this one's by itself, as it does before a phrase that it teaches.
    const sentences = announcements.filter(({ text }) => text !== addressIn(stretch));
    return sentences.length === 0 ? null : () => levelled(pick(sentences).sound);
  }
  if (kind === "machine" || kind === "music" || voices.length === 0) return null;
  const next = piecesOf(kind, addressIn(stretch), voices, seededRandom(seed * 15_485_863 + kind.length));
  return () => {
    const { voice, words, stretch } = next();
    return said(voice, words, stretch);
  };
}

/** A quarter of the stretches are quiet; in the others, machine, music or people are 0 to 20 dB below the artist's level. */
function aroundIt({ seed }: Stretch, { machine, music, babble }: Material, random: () => number): Float32Array | null {
  const which = random();
  if (which < 0.25) return null;
  if (which < 0.62) return machine(length, seed);
  return which < 0.82 && music ? music(length, seed) : babble(length, seed);
}

export interface Listened {
  readonly outcome: Outcome;
  /** Actions that were read back and then confirmed. */
  readonly confirmed: number;
}

const answerWithinMs = 10_000;
const chunkSamples = 1024;

export function listenedTo(model: PhraseModel, net: PhraseNet, stretch: Stretch, sound: Float32Array): Listened {
  const nearness = new Nearness();
  if (isFar(stretch)) nearness.artist = artistDbIn(stretch);
  const ear = new Ear({ model, net, address: addressIn(stretch), nearness });
  const usual = setIn(stretch);
  ear.allow(usual);
  const all: Heard[] = [];
  let confirmed = 0;
  let askedUntilMs = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < sound.length; at += chunkSamples) {
    const nowMs = (at * 1000) / sampleRateHz;
    if (askedUntilMs > 0 && nowMs >= askedUntilMs) {
      askedUntilMs = Number.NEGATIVE_INFINITY;
      ear.allow(usual);
    }
    for (const heard of ear.listen(sound.subarray(at, at + chunkSamples))) {
      all.push(heard);
      if (heard.kind !== "understood") continue;
      if (heard.command === "confirm" && askedUntilMs > nowMs) confirmed++;
      if (readBackCommands.has(heard.command)) {
        askedUntilMs = nowMs + answerWithinMs;
        ear.allow(readBackSet);
      }
    }
  }
  const soundMs = (sound.length * 1000) / sampleRateHz;
  return {
    outcome: outcomeOf({ condition: stretch.kind, speaker: stretch.kind, said: null, soundMs }, all),
    confirmed,
  };
}
