/** What the ear hears in a recording: the same ear, fed faster. Pure but for the model it is handed. */
import { type AddressWord, type CommandId, commandIds } from "../intent/phrases";
import { Ear } from "./ear";
import type { Heard } from "./heard";
import type { PhraseModel } from "./network/loadModel";
import { readWav, type WavErrorCode } from "./sound/wav";

export interface HearOptions {
  readonly model: PhraseModel;
  /** Default "station". */
  readonly address?: AddressWord;
  /** Default all commands. */
  readonly allowed?: Iterable<CommandId>;
}

export type HeardInWav =
  | { readonly ok: true; readonly soundMs: number; readonly heard: readonly Heard[] }
  | { readonly ok: false; readonly code: WavErrorCode; readonly message: string };

/** @param bytes A WAV file, whatever `readWav` accepts. */
export function hearWav(bytes: Uint8Array, options: HearOptions): HeardInWav {
  const read = readWav(bytes);
  if (!read.ok) return read;
  const { samples, rateHz } = read.sound;
  const ear = new Ear({ model: options.model, address: options.address ?? "station", rateHz });
  ear.allow(options.allowed ?? commandIds);
  const heard = [...ear.listen(samples), ...ear.finish()];
  return { ok: true, soundMs: Math.round((samples.length * 1000) / rateHz), heard };
}
