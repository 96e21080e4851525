/** Sound for the browser's microphone: phrases of a voice that the model was not trained on, over a machine of our own. */
import { writeFile } from "node:fs/promises";
import { phrase, rateHz } from "../../../audio/make/rehearsal/artistVoice";
import { type BuzzShape, buzz, buzzRms } from "../../../audio/make/rehearsal/buzz";
import type { AddressWord, CommandId } from "../../../src/intent/phrases";
import type { PhraseLanguage } from "../../../src/intent/wording";
import { writeWav } from "../../../src/recogniser";

/** It never rests, so that a loop has no hole. */
const steady: BuzzShape = { hertz: 104, passSec: [900, 901], restSec: [1, 1] };

/** Phrases in a row, one every `everySec`, over a machine `ratioDb` below them. */
export function phrasesOverMachine(
  said: readonly (readonly [address: AddressWord, command: CommandId])[],
  everySec: number,
  ratioDb: number,
  folder: string,
  language: PhraseLanguage = "en",
): Float32Array {
  const sound = buzz(rateHz, 7, steady).take(Math.round(said.length * everySec * rateHz));
  const gain = (0.05 / buzzRms) * 10 ** (-ratioDb / 20);
  for (let n = 0; n < sound.length; n++) sound[n] = (sound[n] as number) * gain;
  for (const [place, [address, command]] of said.entries()) {
    const from = Math.round((place * everySec + 0.4) * rateHz);
    for (const [n, x] of phrase(address, command, folder, language).entries())
      sound[from + n] = (sound[from + n] ?? 0) + x;
  }
  return sound;
}

export async function writeSound(path: string, sound: Float32Array): Promise<void> {
  await writeFile(path, writeWav(sound, rateHz));
}
