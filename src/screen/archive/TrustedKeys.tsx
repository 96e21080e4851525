/** The keys the studio trusts: this device's, and those of its other devices, compared by their fingerprints. */
import { useState } from "react";
import { fingerprint, PublicKey } from "../../log";
import { Section } from "../prepare/Field";
import fields from "../prepare/Prepare.module.css";
import acts from "../sums/parts/Acts.module.css";
import { Entry } from "../sums/parts/Entry";
import { useStudio, useStudioModel } from "../sums/useStudio";
import { useShared } from "../useModel";
import type { Keeping } from "./keepingModel";
import styles from "./TrustedKeys.module.css";
import { archiveWords } from "./words";

export function TrustedKeys({ keeping }: { keeping: Keeping }) {
  const { language } = useShared();
  const { keeping: w } = archiveWords(language);
  const studio = useStudioModel();
  const trusted = [...useStudio().trusted.values()];
  const [name, setName] = useState("");
  const [written, setWritten] = useState("");
  const key = PublicKey.safeParse(written.replace(/\s+/g, "").toLowerCase());
  const add = () => {
    if (!key.success) return;
    const value = { key: key.data, name: name.trim() };
    void studio.keep(w.keyAdded(value.name), [{ kind: "trusted", id: value.key, value }]);
    setName("");
    setWritten("");
  };
  return (
    <Section title={w.keys} hint={w.keysHint}>
      <p>{w.thisKey}</p>
      <p className={styles.print} data-testid="fingerprint">
        {fingerprint(keeping.publicKey)}
      </p>
      <ul className={acts.rows} data-testid="trusted">
        {trusted.map((one) => (
          <li key={one.key} data-mark="good">
            <div>
              <b>{one.name}</b>
              <small className={styles.print}>{fingerprint(one.key)}</small>
            </div>
            <div className={acts.acts}>
              <button
                type="button"
                onClick={() =>
                  void studio.keep(w.keyRemoved(one.name), [{ kind: "trusted", id: one.key, value: null }])
                }
              >
                {w.removeKey(one.name)}
              </button>
            </div>
          </li>
        ))}
      </ul>
      <div className={fields.fields}>
        <Entry label={w.keyName} value={name} maxLength={80} onChange={setName} />
        <Entry
          label={w.fingerprint}
          value={written}
          hint={w.fingerprintHint}
          trouble={written !== "" && !key.success ? w.notAKey : null}
          onChange={setWritten}
        />
      </div>
      <div className={acts.acts}>
        <button type="button" disabled={!key.success || name.trim() === ""} onClick={add}>
          {w.addKey}
        </button>
      </div>
    </Section>
  );
}
