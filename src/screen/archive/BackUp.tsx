/** Everything of this device as one locked file. */
import { useState } from "react";
import { Section } from "../prepare/Field";
import acts from "../sums/parts/Acts.module.css";
import { Verdict } from "../sums/parts/Verdict";
import { useShared } from "../useModel";
import type { BackedUp, Keeping } from "./keepingModel";
import { isLongEnough, Passphrase } from "./Passphrase";
import { archiveWords } from "./words";

export function BackUp({ keeping }: { keeping: Keeping }) {
  const { language } = useShared();
  const { keeping: w } = archiveWords(language);
  const [passphrase, setPassphrase] = useState("");
  const [progress, setProgress] = useState<{ done: number; of: number } | null>(null);
  const [result, setResult] = useState<BackedUp | null>(null);
  const start = async () => {
    setResult(null);
    setProgress({ done: 0, of: 0 });
    setResult(await keeping.backUp(passphrase, (done, of) => setProgress({ done, of })));
    setProgress(null);
    setPassphrase("");
  };
  return (
    <Section title={w.backUp} hint={w.backUpHint}>
      <Passphrase value={passphrase} isNew onChange={setPassphrase} />
      <div className={acts.acts}>
        <button
          type="button"
          className={acts.main}
          disabled={!isLongEnough(passphrase) || progress !== null}
          onClick={() => void start()}
        >
          {w.makeBackup}
        </button>
        {progress && <progress aria-label={w.backUp} value={progress.done} max={Math.max(1, progress.of)} />}
      </div>
      <div role="status" data-testid="backed-up">
        {result?.ok && <Verdict tone="yes">{w.backedUp(result.counts, Math.ceil(result.bytes / 1e6))}</Verdict>}
        {result?.ok && result.damaged > 0 && <Verdict tone="no">{w.damaged(result.damaged)}</Verdict>}
        {result && !result.ok && <Verdict tone="no">{w.refused[result.code]}</Verdict>}
      </div>
      <ul className={acts.note}>
        {w.backUpNotes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </Section>
  );
}
