/** Judges a record that somebody hands over: drop it or choose it, by mouse, touch or keys. Nothing leaves the device. */
import { type DragEvent, useEffect, useId, useRef, useState } from "react";
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

type Now =
  | { readonly at: "waiting" }
  | { readonly at: "checking"; readonly name: string }
  | { readonly at: "checked"; readonly name: string; readonly file: File; readonly checked: CheckedFile };

/** Joined, so that an effect asks again only when one was added or taken off. */
const listed = (keys: string): readonly string[] => keys.split(" ").filter((key) => key !== "");

export function Verify() {
  const { handOver, studio, language } = useShared();
  const papers = paperWords(language);
  const w = papers.verify;
  const { trusted } = useStudio();
  const keys = [...trusted.keys()].join(" ");
  const [now, setNow] = useState<Now>({ at: "waiting" });
  const [isOver, setOver] = useState(false);
  const id = useId();
  const turn = useRef(0);

  const take = async (file: File | undefined) => {
    if (!file) return;
    turn.current += 1;
    const mine = turn.current;
    setNow({ at: "checking", name: file.name });
    const checked = await handOver.check(file, listed(keys));
    // A larger file that was given before must not answer for this one.
    if (mine === turn.current) setNow({ at: "checked", name: file.name, file, checked });
  };
  // A key that was put on the list, or taken off it: what is shown is judged again.
  const last = useRef<File | null>(null);
  useEffect(() => {
    last.current = now.at === "checked" ? now.file : null;
  });
  useEffect(() => {
    const file = last.current;
    if (!file) return;
    let isWanted = true;
    void handOver.check(file, listed(keys)).then((checked) => {
      if (isWanted) setNow({ at: "checked", name: file.name, file, checked });
    });
    return () => {
      isWanted = false;
    };
  }, [handOver, keys]);
  const dropped = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    void take(event.dataTransfer.files[0]);
  };
  const { checked } = now.at === "checked" ? now : { checked: null };
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
