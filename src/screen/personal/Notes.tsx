/** The spoken notes of a record that is only looked at. */

import { notesOf } from "../../export/notes";
import type { RecordFile } from "../../export/recordFile";
import { NoteSound } from "./NoteSound";
import styles from "./Personal.module.css";
import { personalWords } from "./words";

export function Notes({ record, language }: { record: RecordFile; language: string }) {
  const w = personalWords(language);
  const notes = notesOf(record.entries, record.personal);
  if (notes.length === 0) return null;
  return (
    <section className={styles.part} aria-label={w.notes}>
      <h2>{w.notes}</h2>
      {notes.map((note) => (
        <NoteSound key={note.n} note={note} words={w} />
      ))}
    </section>
  );
}
