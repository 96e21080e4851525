/** A list on paper and nothing else on it: a button, and the sheet for as long as it prints. Its last column is left free. */
import { useState } from "react";
import { createPortal, flushSync } from "react-dom";
import styles from "./PrintedList.module.css";

interface Props {
  /** On the button. */
  readonly act: string;
  readonly title: string;
  /** Above the table: what it is of, when it was made, what to mind. */
  readonly notes: readonly string[];
  /** One more than a row has cells: the last is for a pen. */
  readonly columns: readonly string[];
  readonly rows: readonly { readonly id: string; readonly cells: readonly string[] }[];
  readonly testId: string;
}

export function PrintedList({ act, ...list }: Props) {
  const [isPrinting, setPrinting] = useState(false);
  const print = () => {
    flushSync(() => setPrinting(true));
    window.print();
    setPrinting(false);
  };
  return (
    <>
      <button type="button" disabled={list.rows.length === 0} onClick={print}>
        {act}
      </button>
      {isPrinting && createPortal(<Sheet {...list} />, document.body)}
    </>
  );
}

function Sheet({ title, notes, columns, rows, testId }: Omit<Props, "act">) {
  return (
    <section className={styles.sheet} data-print="" data-testid={testId}>
      <h2>{title}</h2>
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <table>
        <thead>
          <tr>
            {columns.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, cells }) => (
            <tr key={id}>
              {cells.map((cell, at) => (
                <td key={columns[at]}>{cell}</td>
              ))}
              <td className={styles.free} />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
