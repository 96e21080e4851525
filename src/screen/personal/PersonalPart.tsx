/** The client's part of a session: the reference and the spoken notes, and erasing them for good on request. */
import { useEffect, useState } from "react";
import acts from "../sums/parts/Acts.module.css";
import { useShared } from "../useModel";
import { logTrouble } from "../words/logTrouble";
import type { BesideOf } from "./besideModel";
import { NoteSound } from "./NoteSound";
import styles from "./Personal.module.css";
import { personalWords } from "./words";

interface Props {
  readonly session: string;
  /** Left out where what it unfolds from has named it. */
  readonly hasHeading?: boolean;
  /** Told once it is erased on the disk. */
  readonly erased: (places: readonly number[]) => void;
}

/** Who uses keys stands on the harmless answer when the question comes up. */
const focus = (button: HTMLButtonElement | null): void => button?.focus();

export function PersonalPart({ session, hasHeading = true, erased }: Props) {
  const { beside, language, words } = useShared();
  const w = personalWords(language);
  const [now, setNow] = useState<BesideOf | null>(null);
  const [asked, setAsked] = useState<readonly number[] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const read = () => void beside?.read(session).then(setNow);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again for another session only
  useEffect(read, [session]);
  if (!now) return null;

  const { client, notes } = now;
  const here = notes.filter(({ state }) => state === "kept").map(({ n }) => n);
  const all = client.state === "kept" ? [0, ...here] : here;
  const erase = async (places: readonly number[]) => {
    const why = (await beside?.erase(session, places)) ?? null;
    setTrouble(why);
    setAsked(null);
    if (why !== null) return;
    read();
    erased(places);
  };
  return (
    <section className={styles.part} aria-label={w.title} data-testid="personal-part" data-client={client.state}>
      {hasHeading && <h3>{w.title}</h3>}
      <p>{w.client[client.state]("reference" in client ? client.reference : "")}</p>
      {notes.map((note) => (
        <div key={note.n} className={styles.row}>
          <NoteSound note={note} words={w} />
          {note.state === "kept" && (
            <button type="button" className={styles.small} onClick={() => setAsked([note.n])}>
              {w.eraseNote}
            </button>
          )}
        </div>
      ))}
      {asked === null ? (
        all.length > 0 && (
          <div className={acts.acts}>
            <button type="button" onClick={() => setAsked(all)}>
              {w.erase}
            </button>
          </div>
        )
      ) : (
        <div role="alertdialog" aria-label={w.sure} className={styles.sure}>
          <p>
            <b>{w.sure}</b> {w.about}
          </p>
          <div className={acts.acts}>
            <button type="button" className={acts.main} onClick={() => void erase(asked)}>
              {w.eraseNow}
            </button>
            <button type="button" ref={focus} onClick={() => setAsked(null)}>
              {w.keep}
            </button>
          </div>
        </div>
      )}
      {trouble !== null && <p role="alert">{w.notErased(logTrouble(words, trouble))}</p>}
    </section>
  );
}
