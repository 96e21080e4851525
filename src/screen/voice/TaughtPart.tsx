/** What was learnt, what it is worth, and how to undo, save or delete it. */
import { Section } from "../prepare/Field";
import { useShared } from "../useModel";
import type { TeachNow } from "./teachModel";
import { useVoiceWords } from "./useVoiceWords";
import styles from "./Voice.module.css";

export function TaughtPart({ now }: { now: TeachNow }) {
  const { teaching, phrases, language } = useShared();
  const w = useVoiceWords();
  const { taught } = now;
  const percent = (share: number) => Math.round(100 * share);
  const day = (at: string) => new Intl.DateTimeFormat(language, { dateStyle: "medium" }).format(new Date(at));
  return (
    <Section title={w.taughtTitle}>
      {taught === null ? (
        <p data-testid="taught">{w.none}</p>
      ) : (
        <div className={styles.taught} data-testid="taught">
          <p>{w.taught(taught.takes, day(taught.taughtAt), phrases.addresses[taught.address])}</p>
          {!taught.fits && <p role="alert">{w.doesNotFit}</p>}
          {taught.fits && taught.isUsed && (
            <p>
              <b>{w.figures(percent(taught.before), percent(taught.after))}</b>
            </p>
          )}
          {taught.fits && !taught.isUsed && taught.words.length === 0 && <p>{w.notUsed}</p>}
          {taught.words.length > 0 && <p>{w.words(taught.words.map((id) => phrases.commands[id]).join(", "))}</p>}
          {now.learntMs !== null && <p>{w.tookSeconds((now.learntMs / 1000).toFixed(1))}</p>}
        </div>
      )}
      <div className={styles.acts}>
        {now.canUndo && (
          <button type="button" onClick={() => teaching.undo()}>
            {w.undo}
          </button>
        )}
        {taught && (
          <>
            <button type="button" onClick={() => teaching.saveFile()}>
              {w.save}
            </button>
            <button type="button" onClick={() => teaching.forget()}>
              {w.forget}
            </button>
          </>
        )}
      </div>
    </Section>
  );
}
