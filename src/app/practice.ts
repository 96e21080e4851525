/** The built-in recorded artist: a session as it was prepared, and the sound that answers it. Made by the rehearsal. */
import { z } from "zod";
import type { Recording } from "../microphone";
import { SessionInput } from "../session/sessionInput";

export const Practice = z.strictObject({
  format: z.literal("gloveside-practice"),
  formatVersion: z.literal(1),
  /** File beside this one. */
  sound: z.string().regex(/^[a-z][A-Za-z0-9.-]*$/),
  /** What the prepare screen would hand over for this recording. */
  input: SessionInput,
});
export type Practice = z.infer<typeof Practice>;

/** @param folder address of the practice folder, with its slash. @returns null where there is none, or none that fits. */
export async function findPractice(folder: string): Promise<Practice | null> {
  try {
    const answer = await fetch(`${folder}practice.json`);
    const read = Practice.safeParse(answer.ok ? await answer.json() : null);
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** The recogniser's rate: decoded at once to what it wants, an hour of mono is 230 MB less than at 48 kHz. */
const rateHz = 16_000;

/** Decodes the recording. Rejects where the file is missing or is no sound. */
export async function loadRecording(folder: string, practice: Practice): Promise<AudioBuffer & Recording> {
  const answer = await fetch(`${folder}${practice.sound}`);
  if (!answer.ok) throw new Error(`${practice.sound}: ${answer.status}`);
  return new OfflineAudioContext(1, 1, rateHz).decodeAudioData(await answer.arrayBuffer());
}

/** The recorded artist is heard in the room too, softer than the companion. @returns stops it. */
export function playAloud(recording: AudioBuffer): () => void {
  const context = new AudioContext();
  const source = context.createBufferSource();
  source.buffer = recording;
  const gain = context.createGain();
  gain.gain.value = 0.4;
  source.connect(gain).connect(context.destination);
  source.start();
  return () => void context.close();
}
