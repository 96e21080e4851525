/** Judges a record that somebody hands over: drop it or choose it, by mouse, touch or keys. Nothing leaves the device. */
import { type DragEvent, useId, useState } from "react";
import type { CheckedFile } from "../../export/checkFile";
import { PaperChoice } from "../papers/PaperChoice";
import { paperOf } from "../papers/paper";
import { Section } from "../prepare/Field";
import { useShared } from "../useModel";
import { TrustedDevices } from "./TrustedDevices";
import { Verdicts } from "./Verdicts";
import styles from "./Verify.module.css";

type Now =
  | { readonly at: "waiting" }
  | { readonly at: "checking"; readonly name: string }
  | { readonly at: "checked"; readonly name: string; readonly file: File; readonly checked: CheckedFile };

export function Verify() {
  const { handOver, words } = useShared();
  const w = words.papers.verify;
  const [now, setNow] = useState<Now>({ at: "waiting" });
  const [isOver, setOver] = useState(false);
  const id = useId();

  const take = async (file: File | undefined) => {
    if (!file) return;
    setNow({ at: "checking", name: file.name });
    setNow({ at: "checked", name: file.name, file, checked: await handOver.check(file) });
  };
  const dropped = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    void take(event.dataTransfer.files[0]);
  };
  const { checked } = now.at === "checked" ? now : { checked: null };
  return (
    <div className={styles.verify}>
      <div className={styles.screen}>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is one way; the field inside is the other */}
        <div
          className={styles.drop}
          data-over={isOver || undefined}
          onDragOver={(event) => {
            event.preventDefault();
            setOver(true);
          }}
          onDragLeave={() => setOver(false)}
          onDrop={dropped}
        >
          <label htmlFor={id}>
            <b>{w.drop}</b>
            <span>{w.choose}</span>
          </label>
          <input
            id={id}
            type="file"
            accept=".json,.html,application/json,text/html"
            data-testid="record-file"
            onChange={(event) => {
              void take(event.target.files?.[0]);
              event.target.value = "";
            }}
          />
        </div>
        <p className={styles.hint}>{w.hint}</p>
        <div aria-live="polite" className={styles.result}>
          {now.at === "checking" && <p>{w.checking}</p>}
          {now.at === "checked" && <p data-testid="checked">{w.checked(now.name)}</p>}
          {checked && !checked.ok && (
            <p role="alert" className={styles.refused}>
              {w[checked.why]}
            </p>
          )}
          {checked?.ok && <Verdicts verdict={checked.verdict} words={words.papers} />}
        </div>
        <Section title={w.trustedTitle} hint={w.trustedAbout}>
          <TrustedDevices
            offered={
              checked?.ok && checked.verdict.signedBy.ok && !checked.verdict.signedBy.trusted
                ? checked.verdict.signedBy.key
                : null
            }
            changed={() => now.at === "checked" && void take(now.file)}
          />
        </Section>
      </div>
      {checked?.ok && checked.read && <PaperChoice paper={paperOf(checked.read.record, checked.read.head)} />}
    </div>
  );
}
