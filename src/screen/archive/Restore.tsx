/** A backup taken back in: verified first, then all of it or nothing. */
import { useId, useRef, useState } from "react";
import type { Restored } from "../../backup/restore";
import { Working } from "../marks/Working";
import { Section } from "../prepare/Field";
import fields from "../prepare/Field.module.css";
import acts from "../sums/parts/Acts.module.css";
import { Verdict } from "../sums/parts/Verdict";
import { useShared } from "../useModel";
import type { Keeping } from "./keepingModel";
import { Passphrase } from "./Passphrase";
import { archiveWords } from "./words";

export function Restore({ keeping }: { keeping: Keeping }) {
  const { language } = useShared();
  const { keeping: w } = archiveWords(language);
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [file, setFile] = useState<Blob | null>(null);
  const [passphrase, setPassphrase] = useState("");
  const [checked, setChecked] = useState<number | null>(null);
  const [result, setResult] = useState<Restored | null>(null);
  const start = async () => {
    if (!file) return;
    setResult(null);
    setChecked(0);
    setResult(await keeping.restore(file, passphrase, setChecked));
    setChecked(null);
    setPassphrase("");
  };
  return (
    <Section title={w.restore} hint={w.restoreHint}>
      <div className={fields.field}>
        <label htmlFor={id}>{w.file}</label>
        <input
          ref={input}
          id={id}
          type="file"
          data-testid="backup-file"
          onChange={(chosen) => {
            setFile(chosen.target.files?.[0] ?? null);
            setResult(null);
          }}
        />
      </div>
      <Passphrase value={passphrase} isNew={false} onChange={setPassphrase} />
      <div className={acts.acts}>
        <button type="button" disabled={!file || passphrase === "" || checked !== null} onClick={() => void start()}>
          {w.takeBack}
        </button>
        {checked !== null && <Working on={w.takeBack} />}
        {checked !== null && <p role="status">{w.checked(checked)}</p>}
      </div>
      <div role="status" data-testid="restored">
        {result?.ok && <Verdict tone="yes">{w.restored(result.counts, result.alreadyHere)}</Verdict>}
        {result && !result.ok && <Verdict tone="no">{w.refused[result.code]}</Verdict>}
      </div>
    </Section>
  );
}
