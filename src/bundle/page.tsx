/** The page inside the file: takes its record out, verifies it with the program it carries, and shows it as it prints. */
import "../app/jitless";
import "../screen/tokens.css";
import { useState } from "react";
import { createRoot } from "react-dom/client";
import { saveFile } from "../app/device";
import { readRecord } from "../export/readRecord";
import type { Verdict } from "../export/verdict";
import { verifyRecord } from "../export/verifyRecord";
import { walkChain } from "../log/walkChain";
import { PaperChoice } from "../screen/papers/PaperChoice";
import { paperOf } from "../screen/papers/paper";
import { paperWords } from "../screen/papers/words";
import { Notes } from "../screen/personal/Notes";
import { Verdicts } from "../screen/verify/Verdicts";
import { blockId, bytesOfBlock } from "./container";
import styles from "./page.module.css";

function Page({ bytes, verdict }: { bytes: Uint8Array; verdict: Verdict }) {
  const [read] = useState(() => readRecord(bytes));
  const record = read.ok ? read.record : null;
  const words = paperWords(record?.header.input.language ?? "en");
  const head = read.ok ? (walkChain(read.raw.header, read.raw.entries).heads.at(-1) ?? "") : "";
  return (
    <main className={styles.page}>
      <div className={styles.screen}>
        <h1>{words.record.title}</h1>
        <Verdicts verdict={verdict} words={words} record={record} />
        <p>{words.verify.itself}</p>
        {read.ok && (
          <button type="button" onClick={() => saveFile(`gloveside-${read.record.header.session}.json`, read.text)}>
            {words.verify.saveRecord}
          </button>
        )}
      </div>
      {record && <Notes record={record} language={record.header.input.language} />}
      {record && <PaperChoice paper={paperOf(record, head)} />}
    </main>
  );
}

const place = document.getElementById("app");
const block = document.getElementById(blockId);
const bytes = bytesOfBlock(block?.textContent ?? "");
if (place && block && bytes) {
  const verdict = await verifyRecord(bytes);
  place.dataset.checked = "";
  createRoot(place).render(<Page bytes={bytes} verdict={verdict} />);
} else if (place) {
  place.textContent = paperWords("en").verify.noRecord;
}
