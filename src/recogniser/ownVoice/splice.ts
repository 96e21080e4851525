/** New sound out of an artist's own takes: at another pace, or one phrase begun and another ended. Pure. */
import type { AddressWord, CommandId } from "../../intent/phrases";
import { type PhraseLanguage, wordings } from "../../intent/wording";
import { sampleRateHz } from "../sampleRate";
import { resample } from "../sound/resample";

/** A phrase as it was recorded: 16 kHz mono, −1..1, with some quiet around it. */
export interface Said {
  readonly sound: Float32Array;
  readonly startMs: number;
  readonly endMs: number;
}

/** Around where the middle should be, the quietest moment is taken. */
const searchMs = 80;
const quietMs = 10;
const fadeMs = 10;

/** Said `by` times as fast, and as much higher. @param by in whole thousandths. */
export function atPace({ sound, startMs, endMs }: Said, by: number): Said {
  return { sound: resample(sound, Math.round(sampleRateHz * by)), startMs: startMs / by, endMs: endMs / by };
}

/** Where the command is half said, as a share of the whole phrase, by its letters. */
export function middleOf(address: AddressWord, command: CommandId, language: PhraseLanguage): number {
  const letters = (words: string) => words.match(/\p{L}/gu)?.length ?? 0;
  const { addresses, commands } = wordings[language];
  const [before, own] = [letters(addresses[address]), letters(commands[command])];
  return (before + own / 2) / (before + own);
}

/** One phrase to its middle and another from its middle, as loud as the first. @param middles shares of each, 0..1. */
export function crossed(begun: Said, ended: Said, middles: readonly [number, number]): Said {
  const [until, from] = [cutAt(begun, middles[0]), cutAt(ended, middles[1])];
  const gain = loudness(begun) / Math.max(1e-9, loudness(ended));
  const fade = samples(fadeMs);
  const rest = ended.sound.subarray(from);
  const sound = new Float32Array(until - fade + rest.length);
  sound.set(begun.sound.subarray(0, until));
  for (let n = 0; n < rest.length; n++) {
    const at = until - fade + n;
    const share = Math.min(1, n / fade);
    sound[at] = (1 - share) * (sound[at] as number) + share * gain * (rest[n] as number);
  }
  const endMs = ((until - fade - from) * 1000) / sampleRateHz + ended.endMs;
  return { sound, startMs: begun.startMs, endMs };
}

function cutAt({ sound, startMs, endMs }: Said, share: number): number {
  const middle = samples(startMs + share * (endMs - startMs));
  const [reach, half] = [samples(searchMs), samples(quietMs)];
  let [best, least] = [middle, Number.POSITIVE_INFINITY];
  for (let at = Math.max(half, middle - reach); at <= Math.min(sound.length - half, middle + reach); at += half / 4) {
    const power = powerOf(sound.subarray(at - half, at + half));
    if (power < least) [best, least] = [at, power];
  }
  return best;
}

const samples = (ms: number): number => Math.round((ms * sampleRateHz) / 1000);
const powerOf = (sound: Float32Array): number => sound.reduce((sum, x) => sum + x * x, 0) / Math.max(1, sound.length);
const loudness = ({ sound, startMs, endMs }: Said): number =>
  Math.sqrt(powerOf(sound.subarray(samples(startMs), samples(endMs))));
