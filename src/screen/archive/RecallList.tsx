/** The sessions found, on paper: one line a session, with room to write down who was told and when. */

import { useState } from "react";
import { createPortal, flushSync } from "react-dom";
import type { SpokenLanguage } from "../../announcements/languages";
import { lotText } from "../../finding/foundCsv";
import { everything, type Query } from "../../finding/query";
import type { FindingRow } from "../../log/findingRow";
import { paperWords } from "../papers/words";
import { useShared } from "../useModel";
import styles from "./RecallList.module.css";
import { archiveWords } from "./words";

interface Props {
  readonly rows: readonly FindingRow[];
  readonly query: Query;
  readonly today: string;
}

/** The reference, or that it was erased, is not here, or was never given: three different things. */
export function clientIn({ client, clientState: state }: FindingRow, language: SpokenLanguage): string {
  if (state === "kept" || state === "inHeader") return client;
  return paperWords(language).record.clients[state];
}

export function RecallList({ rows, query, today }: Props) {
  const { language } = useShared();
  const { records: w } = archiveWords(language);
  const [isPrinting, setPrinting] = useState(false);
  const print = () => {
    flushSync(() => setPrinting(true));
    window.print();
    setPrinting(false);
  };
  return (
    <>
      <button type="button" disabled={rows.length === 0} onClick={print}>
        {w.print}
      </button>
      {isPrinting && createPortal(<Sheet rows={rows} query={query} today={today} />, document.body)}
    </>
  );
}

function Sheet({ rows, query, today }: Props) {
  const { language } = useShared();
  const { records: w } = archiveWords(language);
  const { columns } = w.sheet;
  const parts = (Object.keys(everything) as (keyof Query)[]).filter((part) => query[part] !== "");
  const asked = parts.map((part) => `${w[part]} ${query[part]}`).join(", ");
  return (
    <section className={styles.sheet} data-print="" data-testid="recall-list">
      <h2>{w.sheet.title}</h2>
      <p>{w.sheet.asked(asked === "" ? w.sheet.everything : asked)}</p>
      <p>
        {w.sheet.made(today)} {w.count(rows.length)}.
      </p>
      <p>{w.sheet.caution}</p>
      <table>
        <thead>
          <tr>
            {Object.values(columns).map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.session}>
              <td>{row.day}</td>
              <td>{clientIn(row, language)}</td>
              <td>{row.station}</td>
              <td>{row.artist}</td>
              <td className={styles.lots}>{row.lots.map(lotText).join("; ")}</td>
              <td className={styles.told} />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
