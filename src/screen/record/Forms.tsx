/** The sealed record in its other forms: on paper, as tables, and as a page that verifies itself. */
import { useState } from "react";
import { factsCsv } from "../../export/factsCsv";
import { type RecordFile, recordText, withoutPersonal } from "../../export/recordFile";
import { surfacesCsv } from "../../export/surfacesCsv";
import { PaperChoice } from "../papers/PaperChoice";
import { paperOf } from "../papers/paper";
import { paperWords } from "../papers/words";
import { useShared } from "../useModel";
import styles from "./Forms.module.css";

export function Forms({ record, isPractice = false }: { record: RecordFile; isPractice?: boolean }) {
  const { language, handOver } = useShared();
  const w = paperWords(language).acts;
  const [isMissing, setMissing] = useState(false);
  const name = `gloveside-${record.header.session}`;
  const csv = (what: string, text: string) => handOver.save(`${name}-${what}.csv`, text, "text/csv");
  const saveBare = (bare: RecordFile) => handOver.save(`${name}-bare.json`, recordText(bare), "application/json");
  return (
    <>
      <section className={styles.forms} aria-label={w.more}>
        <h2>{w.more}</h2>
        <div>
          <button
            type="button"
            onClick={async () => setMissing(!(await handOver.savePage(`${name}.html`, recordText(record))))}
          >
            {w.saveBundle}
          </button>
          <button type="button" onClick={() => csv("surfaces", surfacesCsv(record))}>
            {w.saveSurfaces}
          </button>
          <button type="button" onClick={() => csv("facts", factsCsv(record))}>
            {w.saveFacts}
          </button>
          {record.personal && (
            <button type="button" onClick={() => saveBare(withoutPersonal(record))}>
              {w.saveBare}
            </button>
          )}
        </div>
        {isMissing && <p role="alert">{w.bundleMissing}</p>}
      </section>
      <PaperChoice paper={paperOf(record)} isPractice={isPractice} />
    </>
  );
}
