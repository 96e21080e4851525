/** A list that another device saved: its keys are shown with their fingerprints, and trusted once that is confirmed. */
import { useId, useState } from "react";
import { fingerprint } from "../../log/signing";
import { newOn, readList, type TrustedKey } from "../../trust/trustedKeys";
import fields from "../prepare/Field.module.css";
import acts from "../sums/parts/Acts.module.css";
import { useStudioModel } from "../sums/useStudio";
import { useShared } from "../useModel";
import styles from "./TrustedKeys.module.css";
import { archiveWords } from "./words";

/** Two hundred keys with the longest names stay far below. */
const mostBytes = 1_000_000;

interface Props {
  readonly trusted: readonly TrustedKey[];
  readonly ownKey: string | null;
}

export function TakeKeys({ trusted, ownKey }: Props) {
  const { language } = useShared();
  const { keeping: w } = archiveWords(language);
  const studio = useStudioModel();
  const id = useId();
  const [offered, setOffered] = useState<readonly TrustedKey[]>([]);
  const [said, say] = useState<string | null>(null);
  const fresh = newOn(offered, trusted, ownKey);

  const take = async (file: File | undefined) => {
    if (!file) return;
    const read = readList(file.size > mostBytes ? "" : await file.text().catch(() => ""));
    setOffered(read.ok ? read.value : []);
    say(!read.ok ? w.notAList : newOn(read.value, trusted, ownKey).length === 0 ? w.noNewKeys : null);
  };
  const trustAll = async () => {
    const rows = fresh.map((value) => ({ kind: "trusted", id: value.key, value }) as const);
    say(await studio.keep(w.keysAdded(rows.length), rows));
  };
  return (
    <>
      <div className={fields.field}>
        <label htmlFor={id}>{w.takeKeys}</label>
        <input
          id={id}
          type="file"
          accept=".json,application/json"
          data-testid="trusted-file"
          onChange={(event) => {
            void take(event.target.files?.[0]);
            event.target.value = "";
          }}
        />
        <p className={fields.hint}>{w.takeKeysHint}</p>
      </div>
      {said !== null && <p role="alert">{said}</p>}
      {fresh.length > 0 && (
        <>
          <ul className={acts.rows} data-testid="offered-keys">
            {fresh.map(({ key, name }) => (
              <li key={key} data-mark="soon">
                <div>
                  <b>{name}</b>
                  <small className={styles.print}>{fingerprint(key)}</small>
                </div>
              </li>
            ))}
          </ul>
          <div className={acts.acts}>
            <button type="button" onClick={() => void trustAll()}>
              {w.trustThese(fresh.length)}
            </button>
          </div>
        </>
      )}
    </>
  );
}
