/** The tables of the record's paper: deviations, contact times, figures, lots, and how each claim is known. */
import { howKnown } from "../../export/howKnown";
import { type Note, notesOf } from "../../export/notes";
import { wettings } from "../../export/surfacesCsv";
import styles from "./Papers.module.css";
import { numbered, type Paper } from "./paper";
import type { PaperWords } from "./words";

/** @param most rows; the rest is on the list of deviations. */
export function Deviations({ paper, most }: { paper: Paper; most: number }) {
  const { words } = paper;
  const w = words.record;
  const all = numbered(paper);
  const shown = all.slice(0, most);
  return (
    <section>
      <h3>{w.deviations}</h3>
      {all.length === 0 ? (
        <p>{w.noDeviations}</p>
      ) : (
        <table>
          <thead>
            <tr>
              <DeviationHeads words={words} />
            </tr>
          </thead>
          <tbody>
            {shown.map((one) => (
              <tr key={one.no} data-taken={one.takenBack || undefined}>
                <DeviationCells paper={paper} one={one} />
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {all.length > most && <p>{w.more(all.length - most)}</p>}
    </section>
  );
}

type Numbered = ReturnType<typeof numbered>[number];

/** What every list of deviations begins with: number, time, what, of which item, and what was done about it. */
export function DeviationHeads({ words }: { words: PaperWords }) {
  const { no, at, what, about, done } = words.record.columns;
  return [no, at, what, about, done].map((name) => (
    <th key={name} scope="col">
      {name}
    </th>
  ));
}

export function DeviationCells({ paper, one }: { paper: Paper; one: Numbered }) {
  const { item, step } = one;
  return (
    <>
      <td>{one.no}</td>
      <td>{paper.clockAt(one.n)}</td>
      <td>{paper.words.deviated[one.code]}</td>
      <td>{item ? paper.nameOf(item) : step ? paper.stepName(step) : ""}</td>
      <td>{remedy(paper, one)}</td>
    </>
  );
}

/** What was done about a deviation, in words; a step left out has its reason, a count that differs its own. */
function remedy(paper: Paper, one: Numbered): string {
  const { words, summary } = paper;
  const w = words.record;
  if (one.takenBack) return w.takenBack;
  if (one.done) return `${words.remedies[one.done.what]}, ${paper.clockAt(one.done.n)}`;
  const skipped = summary.skipped.find(({ step, takenBack }) => step === one.step && !takenBack);
  if (one.code === "stepLeftOut" && skipped) return w.leftOut(words.reasons[skipped.reason]);
  const { discrepancy } = summary.sharps;
  if (one.code === "sharpsMismatch" && discrepancy) return words.discrepancies[discrepancy];
  return w.noRemedy;
}

const clock = (paper: Paper, ms: number) =>
  paper.words.record.minutes(Math.floor(ms / 60_000), Math.floor((ms % 60_000) / 1000));

/** @param most rows; the rest is in the table that can be saved. */
export function ContactTimes({ paper, most }: { paper: Paper; most: number }) {
  const { words, summary } = paper;
  const w = words.record;
  const rows = wettings(summary.wetClocks);
  return (
    <section>
      <h3>{w.contact}</h3>
      {rows.length === 0 ? (
        <p>{w.noContact}</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">{w.columns.surface}</th>
              <th scope="col">{w.columns.product}</th>
              <th scope="col">{w.columns.began}</th>
              <th scope="col">{w.columns.needed}</th>
              <th scope="col">{w.columns.watched}</th>
              <th scope="col">{w.columns.ended}</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, most).map(({ surface, counts, before }) => (
              <tr key={counts.n}>
                <td>{paper.nameOf(surface)}</td>
                <td>{paper.nameOf(counts.product)}</td>
                <td>{paper.clockAt(counts.n)}</td>
                <td>{clock(paper, counts.neededMs)}</td>
                <td>{clock(paper, counts.creditedMs)}</td>
                <td>
                  {counts.ended === "ready" ? words.ended.ready : <b>{words.ended[counts.ended]}</b>}
                  {before.length > 0 && `, ${w.triesBefore(before.length)}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {rows.length > most && <p>{w.moreWet(rows.length - most)}</p>}
    </section>
  );
}

export function Figures({ paper }: { paper: Paper }) {
  const { summary, words } = paper;
  const w = words.record;
  const { hands, sharps, waste, refused, gaps, notes, takenBack, phases } = summary;
  const lines = [
    phases.map(({ phase, watchedMs }) => `${words.phases[phase]} ${w.watchedIn(clock(paper, watchedMs))}`).join("; "),
    w.hands(hands.washed, hands.rubbed),
    w.gloves(hands.glovesOn, hands.glovesOff),
    w.sharps(
      sharps.opened,
      sharps.inContainer,
      sharps.counts.at(-1)?.inContainer ?? null,
      sharps.parked,
      sharps.recounts,
    ),
    w.waste(waste.sharps, waste.contaminated, waste.general, waste.reprocess),
    w.others(refused.length, gaps.length, takenBack),
    ...(notes && notes.length > 0 ? [w.noteCount(notes.length)] : []),
  ];
  return (
    <section>
      <h3>{w.figures}</h3>
      <ul className={styles.lines}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

export function Lots({ paper, most }: { paper: Paper; most: number }) {
  const { summary, words } = paper;
  const w = words.record;
  const { lots } = summary;
  const line = ({ item, lot, expiry, known }: (typeof lots)[number]) =>
    `${paper.nameOf(item)} ${lot}${expiry ? `, ${w.columns.expiry} ${expiry}` : ""} (${words.known[known]})`;
  return (
    <section>
      <h3>{w.lots}</h3>
      {lots.length === 0 ? (
        <p>{w.noLots}</p>
      ) : (
        <ul className={styles.lines}>
          {lots.slice(0, most).map((lot, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a record does not change
            <li key={at}>{line(lot)}</li>
          ))}
          {lots.length > most && <li>+ {lots.length - most}</li>}
        </ul>
      )}
    </section>
  );
}

export function Known({ paper }: { paper: Paper }) {
  const { record, summary, words } = paper;
  const notes = notesOf(record.entries, record.personal);
  return (
    <section>
      <h3>{words.record.known}</h3>
      <ul className={styles.lines}>
        {howKnown(record.entries, summary.lots).map(([claim, counts]) => (
          <li key={claim}>
            {words.claims[claim]}:{" "}
            {(["measured", "scanned", "said"] as const)
              .filter((known) => counts[known] > 0)
              .map((known) => words.howMany[known](counts[known]))
              .join(", ")}
          </li>
        ))}
        {notes.length > 0 && (
          <li>
            {words.record.notes}: {notes.map((note) => noteText(note, words)).join(", ")}
          </li>
        )}
      </ul>
    </section>
  );
}

const noteText = ({ clock, state }: Note, words: PaperWords): string =>
  state === "kept" ? clock : words.record.noteAt[state](clock);
