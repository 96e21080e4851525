/** The record on paper, one to two pages: what went wrong first, then the session over time, its figures, and a place to sign. */
import { timelineOf } from "../../export/timeline";
import { FirstToSee } from "./FirstToSee";
import styles from "./Papers.module.css";
import { numbered, type Paper } from "./paper";
import { QrCode } from "./QrCode";
import { ContactTimes, Deviations, Figures, Known, Lots } from "./RecordTables";
import { Signatures } from "./Signatures";
import { Legend, Timeline } from "./Timeline";

export function RecordSheet({ paper, isPractice = false }: { paper: Paper; isPractice?: boolean }) {
  const { record, words, head } = paper;
  const w = words.record;
  const { input, session, rules, appVersion } = record.header;
  const numberOf = new Map(numbered(paper).map(({ n, no }) => [n, no]));
  const last = record.entries.length;
  const name = input.protocol.name[input.language] ?? input.protocol.name.en;
  return (
    <article className={styles.sheet} aria-label={w.title} data-testid="record-sheet" lang={input.language}>
      <header className={styles.head}>
        <div>
          <h2>{w.title}</h2>
          <p className={styles.client}>{w.of(paper.client)}</p>
          <dl className={styles.who}>
            {(
              [
                [w.artist, input.artist],
                [w.station, input.station],
                [w.protocol, `${name} ${input.protocol.version}`],
                [w.day, paper.day],
                [w.time, `${paper.clockAt(1)} – ${paper.clockAt(last)}`],
                [w.zone, input.zone],
              ] as const
            ).map(([term, value]) => (
              <div key={term}>
                <dt>{term}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </div>
        {head !== "" && (
          <figure className={styles.code}>
            <QrCode text={head} label={`${w.head}: ${head}`} />
          </figure>
        )}
      </header>
      {isPractice && <p className={styles.loud}>{w.practice}</p>}
      <FirstToSee paper={paper} />
      <Deviations paper={paper} most={18} />
      <div>
        <h3>{w.timeline}</h3>
        <Timeline timeline={timelineOf(record)} words={words} nameOf={paper.nameOf} numberOf={numberOf} />
        <Legend words={words} />
      </div>
      <ContactTimes paper={paper} most={24} />
      <Figures paper={paper} />
      <Lots paper={paper} most={16} />
      <div className={styles.signOff}>
        <Known paper={paper} />
        <Signatures words={words} roles={[w.signArtist, w.signOther]} title={w.signatures} />
        <footer className={styles.foot}>
          <p>
            {w.head}: <code>{head.match(/.{8}/g)?.join(" ")}</code>. {w.headAbout}
          </p>
          <p>
            {w.session} <code>{session}</code>, {w.rules} {rules}, {w.app} {appVersion}. {w.proves}
          </p>
        </footer>
      </div>
    </article>
  );
}
