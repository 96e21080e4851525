/** Labelled phrases of unseen voices in a condition, each at a place in time of its own, and what the shipped ear hears. */
import { type AddressWord, addressWords, type CommandId, commands } from "../../../src/intent/phrases";
import { Ear, type PhraseModel, sampleRateHz } from "../../../src/recogniser";
import { type Outcome, outcomeOf } from "../../../src/recogniser/figures/outcome";
import type { PhraseNet } from "../../../src/recogniser/network/phraseNet";
import { seededRandom } from "../../../src/rehearsal/random";
import { setWith } from "./allowedSets";
import { inRoom, type Noise } from "./noises";
import type { Condition } from "./plan";
import { rmsOf, said, stretches, type TestVoice } from "./voices";

export interface Clip {
  readonly voice: TestVoice;
  readonly address: AddressWord;
  readonly command: CommandId;
  readonly stretch: number;
  readonly seed: number;
}

/** Every command by every voice: at one of three speeds and with one of the address words each, or at all speeds. */
export function everyPhrase(voices: readonly TestVoice[], of: readonly CommandId[], isFull: boolean): readonly Clip[] {
  return voices.flatMap((voice, v) =>
    of.flatMap((command, c) => {
      // Speed and address word go round apart from one another, and from which third of the commands is heard.
      const [third, ninth] = [Math.floor(c / 3), Math.floor(c / 9)];
      const speeds = isFull ? stretches : stretches.slice((v + third) % 3).slice(0, 1);
      return speeds.map((stretch, s) => ({
        voice,
        command,
        stretch,
        address: addressWords[(v + ninth + s) % addressWords.length] ?? "station",
        seed: 1000 * v + 10 * c + s + 1,
      }));
    }),
  );
}

const beforeMs = 1200;
const afterMs = 1000;
/** A step of the ear: where a phrase falls in it changes its score, and so each clip falls anywhere in one. */
const stepMs = 80;

export interface Mixed {
  readonly sound: Float32Array;
  /** Where the phrase ends, its room's tail not counted. */
  readonly endMs: number;
}

/** Half of the clips in a small room; noise at the ratio over the phrase's own length; peak −25 to −3 dBFS; a little hiss. */
export function mixed(clip: Clip, { ratioDb, name }: Pick<Condition, "ratioDb" | "name">, noise: Noise | null): Mixed {
  const random = seededRandom(clip.seed * 7919 + name.length);
  const dry = said(clip.voice, `${clip.address} ${commands[clip.command]}`, clip.stretch);
  const speech = random() < 0.5 ? inRoom(dry, random) : dry;
  const before = Math.round(((beforeMs + stepMs * random()) * sampleRateHz) / 1000);
  const length = before + dry.length + (afterMs * sampleRateHz) / 1000;
  const around = noise?.(length, clip.seed) ?? null;
  const gain = around ? (rmsOf(dry) / (rmsOf(around) + 1e-9)) * 10 ** (-ratioDb / 20) : 0;
  const sound = Float32Array.from({ length }, (_, n) => (speech[n - before] ?? 0) + gain * (around?.[n] ?? 0));
  const peak = sound.reduce((most, x) => Math.max(most, Math.abs(x)), 1e-9);
  const level = 10 ** ((-25 + 22 * random()) / 20) / peak;
  for (let n = 0; n < length; n++) sound[n] = level * (sound[n] as number) + (random() - 0.5) * 4e-4;
  return { sound, endMs: ((before + dry.length) * 1000) / sampleRateHz };
}

export const allowedFor = (clip: Clip): readonly CommandId[] => setWith(clip.command, seededRandom(clip.seed * 31));

export interface Judged {
  readonly outcome: Outcome;
  /** From the end of the phrase to the decision, in sound; null where it was not heard right. */
  readonly delayMs: number | null;
}

export function heardBy(model: PhraseModel, net: PhraseNet, clip: Clip, name: string, { sound, endMs }: Mixed): Judged {
  const ear = new Ear({ model, net, address: clip.address });
  ear.allow(allowedFor(clip));
  const heard = ear.listen(sound);
  const { speaker } = clip.voice;
  const soundMs = (sound.length * 1000) / sampleRateHz;
  const outcome = outcomeOf({ condition: name, speaker, said: clip.command, soundMs }, heard);
  const right = heard.find((one) => one.kind === "understood" && one.command === clip.command);
  return { outcome, delayMs: right ? right.atMs - endMs : null };
}
