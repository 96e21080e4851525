/** The list of deviations as a form: every one with what was done about it, and room to write what will be done. */

import { FirstToSee } from "./FirstToSee";
import styles from "./Papers.module.css";
import { numbered, type Paper } from "./paper";
import { DeviationCells, DeviationHeads } from "./RecordTables";
import { Signatures } from "./Signatures";

export function DeviationSheet({ paper }: { paper: Paper }) {
  const { words, record, summary, head } = paper;
  const w = words.list;
  const all = numbered(paper);
  const skipped = summary.skipped.filter(({ takenBack }) => !takenBack);
  return (
    <article
      className={styles.sheet}
      aria-label={w.title}
      data-testid="deviation-sheet"
      lang={record.header.input.language}
    >
      <header className={styles.head}>
        <div>
          <h2>{w.title}</h2>
          <p>{w.about(paper.client, paper.day)}</p>
        </div>
      </header>
      <FirstToSee paper={paper} />
      {all.length === 0 ? (
        <p>{w.none}</p>
      ) : (
        <table className={styles.form}>
          <thead>
            <tr>
              <DeviationHeads words={words} />
              <th scope="col">{w.after}</th>
            </tr>
          </thead>
          <tbody>
            {all.map((one) => (
              <tr key={one.no} data-taken={one.takenBack || undefined}>
                <DeviationCells paper={paper} one={one} />
                <td className={styles.blank} />
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {skipped.length > 0 && (
        <section>
          <h3>{w.skipped}</h3>
          <ul className={styles.lines}>
            {skipped.map(({ n, step, reason }) => (
              <li key={n}>
                {paper.clockAt(n)} {paper.stepName(step)}: {words.reasons[reason]}
              </li>
            ))}
          </ul>
        </section>
      )}
      <Signatures words={words} roles={[words.record.signArtist, w.checked]} title={words.record.signatures} />
      <footer className={styles.foot}>
        <p>
          {words.record.head}: <code>{head.match(/.{8}/g)?.join(" ")}</code>. {words.record.proves}
        </p>
      </footer>
    </article>
  );
}
