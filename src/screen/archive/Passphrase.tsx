/** A passphrase typed out of sight, with what may help a password keeper; shown on demand. */
import { useId, useState } from "react";
import { shortestPassphrase } from "../../locked/locked";
import { Tick } from "../prepare/Field";
import styles from "../prepare/Field.module.css";
import entry from "../sums/parts/Entry.module.css";
import { useShared } from "../useModel";
import { archiveWords } from "./words";

interface Props {
  readonly value: string;
  readonly isNew: boolean;
  /** Where there are several on a page. */
  readonly label?: string;
  readonly onChange: (value: string) => void;
}

export const isLongEnough = (passphrase: string): boolean => [...passphrase].length >= shortestPassphrase;

export function Passphrase({ value, isNew, label, onChange }: Props) {
  const { language } = useShared();
  const { keeping: w } = archiveWords(language);
  const id = useId();
  const [isShown, setShown] = useState(false);
  return (
    <>
      <div className={styles.field}>
        <label htmlFor={id}>{label ?? w.passphrase}</label>
        <input
          id={id}
          className={entry.entry}
          type={isShown ? "text" : "password"}
          autoComplete={isNew ? "new-password" : "current-password"}
          value={value}
          aria-describedby={isNew ? `${id}-hint` : undefined}
          onChange={(changed) => onChange(changed.target.value)}
        />
        {isNew && (
          <p id={`${id}-hint`} className={styles.hint}>
            {w.passphraseHint(shortestPassphrase)}
          </p>
        )}
      </div>
      <Tick label={w.show} checked={isShown} onChange={setShown} />
    </>
  );
}
