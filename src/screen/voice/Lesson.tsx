/** A lesson as it goes on: what to say now, large enough to be read from where the artist sits. */
import type { AddressWord } from "../../intent/phrases";
import { Level } from "../session/Ear";
import { useShared } from "../useModel";
import { type TeachNow, takesEach } from "./teachModel";
import { useVoiceWords } from "./useVoiceWords";
import styles from "./Voice.module.css";

export function Lesson({ now, address }: { now: TeachNow; address: AddressWord }) {
  const { teaching, phrases } = useShared();
  const w = useVoiceWords();
  const { ask } = now;
  return (
    <section className={styles.lesson} data-testid="lesson" data-state={now.state}>
      <p className={styles.state} role="status">
        {w.states[now.state]}
      </p>
      {ask && (
        <p className={styles.phrase} data-testid="say-now">
          {phrases.addresses[address]} {phrases.commands[ask.command]}
        </p>
      )}
      {ask && (
        <p className={styles.count}>
          {w.takeOf(ask.take, takesEach)} · {w.done(now.phrasesDone, now.phrases)}
        </p>
      )}
      <Level />
      <p className={styles.wrong} aria-live="polite">
        {now.lastTrouble ? w.takeTroubles[now.lastTrouble] : ""}
      </p>
      <div className={styles.acts}>
        <button type="button" disabled={now.state === "learning"} onClick={() => teaching.enough()}>
          {w.enough}
        </button>
        <button type="button" onClick={() => teaching.cancel()}>
          {w.cancel}
        </button>
      </div>
    </section>
  );
}
