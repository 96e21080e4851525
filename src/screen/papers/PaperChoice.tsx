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
    <div className={styles.papers}>
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
      {shown === "sheet" ? <RecordSheet paper={paper} isPractice={isPractice} /> : <DeviationSheet paper={paper} />}
    </div>
  );
}
