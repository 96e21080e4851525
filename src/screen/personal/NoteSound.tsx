/** One spoken note: when, how long, and its sound where it is still here. It is played from memory; nothing is fetched. */
import { useEffect, useState } from "react";
import type { Note } from "../../export/notes";
import { bytesOfBase64 } from "../../log/personal";
import styles from "./Personal.module.css";
import type { PersonalWords } from "./words";

export function NoteSound({ note, words: w }: { note: Note; words: PersonalWords }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const bytes = note.wav === null ? null : bytesOfBase64(note.wav);
    if (bytes === null) return;
    const made = URL.createObjectURL(new Blob([bytes], { type: "audio/wav" }));
    setAddress(made);
    return () => {
      setAddress(null);
      URL.revokeObjectURL(made);
    };
  }, [note.wav]);
  const name = w.note(note.clock, Math.ceil(note.lengthMs / 1000));
  return (
    <div className={styles.note} data-testid="note" data-state={note.state}>
      <span>{name}</span>
      {/* biome-ignore lint/a11y/useMediaCaption: what was said is known by its sound alone */}
      {address !== null && <audio controls preload="metadata" src={address} aria-label={name} />}
      {note.state === "erased" && <em>{w.noteErased}</em>}
      {note.state === "notIncluded" && <em>{w.noteNotHere}</em>}
    </div>
  );
}
