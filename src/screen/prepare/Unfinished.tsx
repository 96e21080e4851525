/** Sessions that were not closed: taken up again where they were. */
import type { PrepareView } from "../model";
import { useShared } from "../useModel";
import styles from "./Unfinished.module.css";

export function Unfinished({ view }: { view: PrepareView }) {
  const { words, asks } = useShared();
  const w = words.prepare;
  if (view.unfinished.length === 0) return null;
  return (
    <section className={styles.unfinished} aria-label={w.unfinished}>
      <h2>{w.unfinished}</h2>
      <ul>
        {view.unfinished.map((session) => (
          <li key={session.session}>
            <div>
              <b>{session.protocolName}</b>
              <p>{w.unfinishedAbout(session.clientReference ?? words.noClient, session.entries)}</p>
            </div>
            <button type="button" disabled={view.busy} onClick={() => asks.resume(session.session)}>
              {w.resume}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
