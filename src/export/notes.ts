/** The notes that were spoken in a session, with their sound where the record still holds it. */
import { type LogEntry, type PartState, type PersonalPart, stateOf } from "../log";

export interface Note {
  /** The fact that commits to it. */
  readonly n: number;
  /** "09:41", as the wall clock of the station said. */
  readonly clock: string;
  readonly lengthMs: number;
  readonly state: PartState;
  /** A whole WAV file in base64; null where it is not here. */
  readonly wav: string | null;
}

export function notesOf(entries: readonly LogEntry[], personal: readonly PersonalPart[] = []): readonly Note[] {
  const parts = new Map(personal.map((part) => [part.n, part]));
  return entries.flatMap(({ n, at, fact }) => {
    if (fact.type !== "v1.NoteKept") return [];
    const part = parts.get(n);
    const wav = part && "wav" in part ? part.wav : null;
    return [{ n, clock: at.slice(11, 16), lengthMs: fact.lengthMs, state: stateOf(part), wav }];
  });
}
