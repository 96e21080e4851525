/** How an utterance would sound on this device: wholly recorded, or what becomes of the texts that no clip covers. */
import { type ClipManifest, clipKey, clipsOf } from "./clips";
import type { Utterance } from "./utterance";

/** "letters" is no help at a station; "nothing" stays on the screen alone. */
export type HeardAs = "clips" | "localVoice" | "words" | "letters" | "nothing";

export function heardAs(utterance: Pick<Utterance, "parts">, manifest: ClipManifest, hasLocalVoice: boolean): HeardAs {
  const without = clipsOf(utterance, manifest).flatMap((piece) => (piece.say === "text" ? [piece] : []));
  if (without.length === 0) return "clips";
  if (hasLocalVoice) return "localVoice";
  if (without.some(({ unspeakable }) => unspeakable.length > 0)) return "nothing";
  const isWhole = without.every(({ text, spelled }) => spelled.length === wordCount(text));
  return isWhole ? "words" : "letters";
}

const wordCount = (text: string): number =>
  clipKey(text)
    .split(/[\s.,:;!?/-]+/)
    .filter(Boolean).length;
