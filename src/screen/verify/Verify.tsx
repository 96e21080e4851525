/** Judges a record that somebody hands over: drop it or choose it, by mouse, touch or keys. Nothing leaves the device. */
import { type DragEvent, useEffect, useId, useState } from "react";
import type { CheckedFile } from "../../export/checkFile";
import { TrustedKeys } from "../archive/TrustedKeys";
import { PaperChoice } from "../papers/PaperChoice";
import { paperOf } from "../papers/paper";
import { paperWords } from "../papers/words";
import { Notes } from "../personal/Notes";
import { useStudio } from "../sums/useStudio";
import { useShared } from "../useModel";
import { Verdicts } from "./Verdicts";
import styles from "./Verify.module.css";

/** What came out for one file: never shown for another. */
interface Judged {
  readonly file: File;
  readonly checked: CheckedFile;
}

/** Joined, so that an effect asks again only when one was added or taken off. */
const listed = (keys: string): readonly string[] => keys.split(" ").filter((key) => key !== "");

export function Verify() {
  const { handOver, studio, language } = useShared();
  const papers = paperWords(language);
  const w = papers.verify;
  const { trusted } = useStudio();
  const keys = [...trusted.keys()].join(" ");
  const [given, setGiven] = useState<File | null>(null);
  const [judged, setJudged] = useState<Judged | null>(null);
  const [isOver, setOver] = useState(false);
  const id = useId();

  // Judged again when a key was put on the list or taken off it. What a file given before, or an older list, would
  // still answer is not wanted any more.
  useEffect(() => {
    if (!given) return;
    let isWanted = true;
    void handOver.check(given, listed(keys)).then((checked) => {
      if (isWanted) setJudged({ file: given, checked });
    });
    return () => {
      isWanted = false;
    };
  }, [handOver, given, keys]);
  const dropped = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    setGiven(event.dataTransfer.files[0] ?? given);
  };
  const checked = judged !== null && judged.file === given ? judged.checked : null;
  const signedBy = checked?.ok ? checked.verdict.signedBy : null;
  const stranger = signedBy?.ok && signedBy.trusted === false ? signedBy.key : null;
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
              setGiven(event.target.files?.[0] ?? given);
              event.target.value = "";
            }}
          />
        </div>
        <p className={styles.hint}>{w.hint}</p>
        <div aria-live="polite" className={styles.result}>
          {given && !checked && <p>{w.checking}</p>}
          {given && checked && <p data-testid="checked">{w.checked(given.name)}</p>}
          {checked && !checked.ok && (
            <p role="alert" className={styles.refused}>
              {w[checked.why]}
            </p>
          )}
          {checked?.ok && (
            <Verdicts
              verdict={checked.verdict}
              words={papers}
              record={checked.read?.record ?? null}
              ownerOf={(key) => ({ name: trusted.get(key)?.name ?? null })}
            />
          )}
        </div>
        {studio && <TrustedKeys offered={stranger} />}
      </div>
      {checked?.ok && checked.read && <Notes record={checked.read.record} language={language} />}
      {checked?.ok && checked.read && <PaperChoice paper={paperOf(checked.read.record, checked.read.head)} />}
    </div>
  );
}
