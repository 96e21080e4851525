/**
 * The sound check before a session: the machine alone for some seconds, then three phrases over it, then a plain verdict
 * with what to change. Fed with levels, ten a second, and with what was understood. Pure.
 *
 *   machine ──four seconds──▶ phrase 1 ──understood, or given up──▶ phrase 2 ──▶ phrase 3 ──▶ verdict
 */
import type { CommandId } from "../intent/phrases";
import type { Level } from "./level";

/** A step of the walk, an answer in many words and the one that must never be missed. */
export const triedPhrases = ["done", "howLong", "accident"] as const satisfies readonly CommandId[];

const levelsOfMachine = 40;
/** A phrase not understood in twelve seconds is given up. */
const levelsOfPhrase = 120;
/** Speech is measured in its loudest second, the length of a phrase. */
const levelsOfSpeech = 10;
const clipAt = 0.985;
/** Digital silence: a mute switch, or the wrong device. The quietest real microphone lies far above. */
const nothingAtAll = 1e-5;
const tooQuietDb = -45;
/**
 * Speech above the machine, in decibels. Of unseen synthetic voices the phrase model understands 97 of 100 phrases at 10 dB
 * (audio/make/MODEL_CARD.md); people in a real room differ, so we ask for more: ten is the least to
 * work by and twenty is good (our choice, not measured on people).
 */
export const goodRatioDb = 20;
export const leastRatioDb = 10;

export type SoundAdvice =
  /** Not a sound comes in. */
  | "dead"
  | "clipped"
  | "tooQuiet"
  /** Speech is hardly above the machine: another microphone. */
  | "closeMicrophone"
  /** Better, but not good: nearer. */
  | "nearer"
  /** The device changes the sound as for telephone calls. */
  | "processed"
  | "busyDevice"
  /** Loud and clear, and still not understood: teach it this voice. */
  | "teach";

export interface SoundVerdict {
  readonly grade: "good" | "fair" | "poor";
  /** Decibels of full scale; null where nothing was to be measured. */
  readonly machineDb: number | null;
  readonly speechDb: number | null;
  /** Speech above the machine. */
  readonly ratioDb: number | null;
  readonly understood: number;
  readonly advice: readonly SoundAdvice[];
}

export interface SoundCheck {
  readonly stage: "machine" | "phrase" | "verdict";
  /** Which of `triedPhrases` is asked for. */
  readonly phrase: number;
  readonly heard: readonly boolean[];
  readonly machine: readonly Level[];
  readonly speech: readonly (readonly Level[])[];
  readonly verdict: SoundVerdict | null;
}

/** What the device does to the sound, and whether it keeps up. */
export interface SoundCircumstances {
  readonly noiseSuppression: boolean;
  readonly isBusy: boolean;
}

export const beginSoundCheck: SoundCheck = {
  stage: "machine",
  phrase: 0,
  heard: [],
  machine: [],
  speech: [],
  verdict: null,
};

/** A tenth of a second of sound. */
export function tookLevel(check: SoundCheck, level: Level, around: SoundCircumstances): SoundCheck {
  if (check.stage === "machine") {
    const machine = [...check.machine, level];
    return machine.length < levelsOfMachine
      ? { ...check, machine }
      : { ...check, machine, stage: "phrase", speech: [[]] };
  }
  if (check.stage === "verdict") return check;
  const now = [...(check.speech[check.phrase] ?? []), level];
  const next = { ...check, speech: [...check.speech.slice(0, check.phrase), now] };
  return now.length < levelsOfPhrase ? next : onwards(next, false, around);
}

/** Something was understood; only the phrase that was asked for counts. */
export function understood(check: SoundCheck, command: CommandId, around: SoundCircumstances): SoundCheck {
  const isAsked = check.stage === "phrase" && command === triedPhrases[check.phrase];
  return isAsked ? onwards(check, true, around) : check;
}

/**
 * How loud the artist is, the machine taken out, in decibels of full scale; null where it was not measured well, or where the
 * device changes levels as it likes and it would mean nothing.
 */
export function artistDb({ grade, machineDb, ratioDb }: SoundVerdict, changesLevels: boolean): number | null {
  return grade === "poor" || changesLevels || machineDb === null || ratioDb === null ? null : machineDb + ratioDb;
}

function onwards(check: SoundCheck, wasHeard: boolean, around: SoundCircumstances): SoundCheck {
  const heard = [...check.heard, wasHeard];
  if (heard.length < triedPhrases.length) {
    return { ...check, heard, phrase: check.phrase + 1, speech: [...check.speech, []] };
  }
  return { ...check, heard, stage: "verdict", verdict: verdictOf({ ...check, heard }, around) };
}

function verdictOf({ machine, speech, heard }: SoundCheck, around: SoundCircumstances): SoundVerdict {
  const all = [...machine, ...speech.flat()];
  const count = heard.filter(Boolean).length;
  if (all.every(({ peak }) => peak < nothingAtAll)) {
    return { grade: "poor", machineDb: null, speechDb: null, ratioDb: null, understood: count, advice: ["dead"] };
  }
  const noise = roomPower(machine);
  const loud = median(speech.map((levels) => meanPower(loudest(levels))));
  const ratioDb = toDb(Math.max(loud - noise, 1e-3 * noise, 1e-12)) - toDb(Math.max(noise, 1e-12));
  const isClipped = all.filter(({ peak }) => peak >= clipAt).length > 1;
  const speechDb = toDb(loud);
  const advice: SoundAdvice[] = [];
  if (isClipped) advice.push("clipped");
  if (speechDb < tooQuietDb) advice.push("tooQuiet");
  if (ratioDb < leastRatioDb) advice.push("closeMicrophone");
  else if (ratioDb < goodRatioDb) advice.push("nearer");
  if (around.noiseSuppression) advice.push("processed");
  if (around.isBusy) advice.push("busyDevice");
  if (count < heard.length && ratioDb >= leastRatioDb && !isClipped) advice.push("teach");
  const isPoor = ratioDb < leastRatioDb || count < heard.length - 1;
  const isGood = ratioDb >= goodRatioDb && count === heard.length && !isClipped && !around.isBusy;
  return {
    grade: isPoor ? "poor" : isGood ? "good" : "fair",
    machineDb: toDb(noise),
    speechDb,
    ratioDb,
    understood: count,
    advice,
  };
}

const toDb = (power: number): number => 10 * Math.log10(Math.max(power, 1e-12));
const meanPower = (levels: readonly Level[]): number =>
  levels.reduce((sum, { rms }) => sum + rms * rms, 0) / Math.max(1, levels.length);
/** The quieter quarter of what was heard, so that a word spoken meanwhile does not count as machine. */
const roomPower = (levels: readonly Level[]): number =>
  levels.map(({ rms }) => rms * rms).toSorted((a, b) => a - b)[Math.floor(levels.length / 4)] ?? 0;
const loudest = (levels: readonly Level[]): readonly Level[] =>
  levels.toSorted((a, b) => b.rms - a.rms).slice(0, levelsOfSpeech);
const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? 0;
