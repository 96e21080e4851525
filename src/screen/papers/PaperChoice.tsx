/** The papers of one record: which one is looked at is the one that prints. */
import { useState } from "react";
import { DeviationSheet } from "./DeviationSheet";
import styles from "./PaperChoice.module.css";
import type { Paper } from "./paper";
import { RecordSheet } from "./RecordSheet";

const papers = ["sheet", "list"] as const;

export function PaperChoice({ paper, isPractice = false }: { paper: Paper; isPractice?: boolean }) {
  const [shown, show] = useState<(typeof papers)[number]>("sheet");
  const w = paper.words.acts;
  return (
    <div className={styles.papers} data-paper>
      <div className={styles.acts}>
        <fieldset>
          <legend>{w.papers}</legend>
          {papers.map((one) => (
            <label key={one}>
              <input type="radio" name="paper" checked={one === shown} onChange={() => show(one)} />
              <span>{w[one]}</span>
            </label>
          ))}
        </fieldset>
        <button type="button" onClick={() => globalThis.print()}>
          {w.print}
        </button>
      </div>
      {/* A paper is wider than a phone; what scrolls must be reachable by keys. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: see above */}
      <section className={styles.scroll} tabIndex={0} aria-label={w.preview}>
        {shown === "sheet" ? <RecordSheet paper={paper} isPractice={isPractice} /> : <DeviationSheet paper={paper} />}
      </section>
    </div>
  );
}
