/** Whether the notes are what their facts say: sound that plays, as long as the fact has it. */
import { bytesOfBase64, type LogEntry, type PersonalPart } from "../log";
import { readWav } from "../recogniser/sound/wav";
import type { Fault } from "./verdict";

/** A fact rounds to the millisecond, and the sound may end a hair after it, for want of whole samples. */
const spareMs = 20;

/** @returns the first note that differs; what is erased or not included cannot. */
export function noteTrouble(
  entries: readonly LogEntry[],
  personal: readonly PersonalPart[],
): Fault<"note-differs"> | null {
  for (const part of personal) {
    const fact = entries[part.n - 1]?.fact;
    if (fact?.type !== "v1.NoteKept" || !("wav" in part)) continue;
    const read = readWav(bytesOfBase64(part.wav) ?? new Uint8Array());
    const foundMs = read.ok ? (read.sound.samples.length * 1000) / read.sound.rateHz : null;
    if (foundMs !== null && Math.abs(foundMs - fact.lengthMs) <= spareMs) continue;
    return {
      ...{ ok: false, code: "note-differs", at: { part: "personal", n: part.n } },
      expected: `${fact.lengthMs} ms of sound`,
      found: foundMs === null ? "no sound that plays" : `${Math.round(foundMs)} ms`,
    };
  }
  return null;
}
