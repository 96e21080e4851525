/** A note is being spoken: that it records, how loud it hears, how long is left, and a large target to end it. */
import { keysOf } from "../keys";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { Level } from "./Ear";
import styles from "./NoteSign.module.css";

export function NoteSign({ note, letterKeys }: { note: NonNullable<SessionView["note"]>; letterKeys: boolean }) {
  const { words, asks } = useShared();
  const w = words.note;
  const [key] = keysOf("note", letterKeys);
  return (
    <section className={styles.sign} aria-label={w.title} data-testid="note-sign" data-at={note.at}>
      <p role="status">
        <i aria-hidden="true" /> {w[note.at]}
      </p>
      {note.at === "recording" && (
        <>
          <Level />
          <p className={styles.left} role="timer" aria-live="off">
            {w.left(Math.ceil(note.leftMs / 1000))}
          </p>
          <button type="button" onClick={() => asks.command("note", { by: "touch" })}>
            {w.stop}
            {key && <kbd>{key}</kbd>}
          </button>
          <p>{w.only}</p>
        </>
      )}
    </section>
  );
}
