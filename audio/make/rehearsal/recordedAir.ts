/** The air of a rehearsal while it is recorded: the artist's phrases over the machine and the hush of a room. */

import type { AddressWord, CommandId } from "../../../src/intent/phrases";
import type { Air } from "../../../src/rehearsal/act";
import { seededRandom } from "../../../src/rehearsal/random";
import { phrase, phraseRms, rateHz } from "./artistVoice";
import { buzz, buzzRms } from "./buzz";

export interface RecordedAir extends Air {
  /** All that was taken so far. */
  recording(): Float32Array;
}

export interface AirShape {
  /** Phrase over machine, decibels of root mean square; null for a machine that is off. */
  readonly snrDb: number | null;
  readonly seed: number;
  readonly address: AddressWord;
  /** Where single phrases are kept. */
  readonly folder: string;
}

/** A quiet room, about -64 dB of full scale; white noise. */
const roomRms = 0.0006;

export function recordedAir({ snrDb, seed, address, folder }: AirShape): RecordedAir {
  const machine = snrDb === null ? null : buzz(rateHz, seed);
  const machineGain = snrDb === null ? 0 : phraseRms / 10 ** (snrDb / 20) / buzzRms;
  const random = seededRandom(seed + 1);
  const taken: Float32Array[] = [];
  let saying = new Float32Array(0);
  let said = 0;

  return {
    rateHz,
    say(command: CommandId) {
      saying = Float32Array.from(phrase(address, command, folder));
      said = 0;
      return (saying.length * 1000) / rateHz;
    },
    take(count) {
      const sound = Float32Array.from({ length: count }, () => roomRms * Math.sqrt(12) * (random() - 0.5));
      const noise = machine?.take(count);
      for (let n = 0; n < count; n++)
        sound[n] = (sound[n] ?? 0) + machineGain * (noise?.[n] ?? 0) + (saying[said++] ?? 0);
      taken.push(sound);
      return sound;
    },
    recording() {
      const whole = new Float32Array(taken.reduce((sum, { length }) => sum + length, 0));
      let at = 0;
      for (const part of taken) {
        whole.set(part, at);
        at += part.length;
      }
      return whole;
    },
  };
}
