/** What must be seen before anything else: sharps that do not balance, items left unready, an accident, no seal. */
import styles from "./Papers.module.css";
import type { Paper } from "./paper";

export function FirstToSee({ paper }: { paper: Paper }) {
  const { summary, words, record } = paper;
  const w = words.record;
  const { exposures, outcome, closed, outOfUse = [] } = summary;
  const { carriedOver } = record.header.input;
  return (
    <section aria-label={w.first} className={styles.first}>
      {record.closing === null && <p className={styles.loud}>{w.unfinished}</p>}
      <Sharps paper={paper} />
      {exposures.length > 0 && (
        <p className={styles.loud}>{outcome === "endedByExposure" ? w.exposureEnded : w.exposure}</p>
      )}
      {closed &&
        (closed.unready.length > 0 ? (
          <p className={styles.loud}>{w.unready(closed.unready.map(paper.nameOf).join(", "))}</p>
        ) : (
          <p>{w.allReady}</p>
        ))}
      {outOfUse.length > 0 && <p className={styles.loud}>{w.outOfUse(outOfUse.map(paper.nameOf).join(", "))}</p>}
      {carriedOver.length > 0 && <p>{w.carriedOver(carriedOver.map(paper.nameOf).join(", "))}</p>}
    </section>
  );
}

/** A difference is never shown as balanced, whatever else the record says. */
function Sharps({ paper: { summary, words } }: { paper: Paper }) {
  const w = words.record;
  const { opened, inContainer, parked, counts, discrepancy } = summary.sharps;
  const counted = counts.at(-1);
  if (opened === 0 && discrepancy === null) return <p>{w.noSharps}</p>;
  if (
    discrepancy !== null ||
    (counted && counted.inContainer !== counted.expected) ||
    (counted && inContainer !== opened)
  ) {
    const reason = words.discrepancies[discrepancy ?? "unexplained"];
    return <p className={styles.loud}>{w.notBalanced(opened, counted?.inContainer ?? null, parked, reason)}</p>;
  }
  if (!counted) return <p className={styles.loud}>{w.notCounted(opened)}</p>;
  return <p>{w.balanced(opened)}</p>;
}
