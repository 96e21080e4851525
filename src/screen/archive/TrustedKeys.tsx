/** The keys the studio trusts: this device's, and those of its other devices, compared by their fingerprints. */
import { useEffect, useState } from "react";
import { fingerprint } from "../../log/signing";
import { keyFrom, listText, type TrustedKey, withOwn } from "../../trust/trustedKeys";
import { Section } from "../prepare/Field";
import fields from "../prepare/Prepare.module.css";
import acts from "../sums/parts/Acts.module.css";
import { Entry } from "../sums/parts/Entry";
import { useStudio, useStudioModel } from "../sums/useStudio";
import { useShared } from "../useModel";
import { TakeKeys } from "./TakeKeys";
import styles from "./TrustedKeys.module.css";
import { archiveWords } from "./words";

/** @param offered the key of a record just checked, where it is not trusted yet. */
export function TrustedKeys({ offered = null }: { offered?: string | null }) {
  const { language, handOver } = useShared();
  const { keeping: w } = archiveWords(language);
  const trusted = [...useStudio().trusted.values()];
  const { deviceKey } = handOver;
  const list = deviceKey ? withOwn(trusted, { key: deviceKey, name: w.ownName(deviceKey.slice(0, 4)) }) : trusted;
  return (
    <Section title={w.keys} hint={w.keysHint}>
      {deviceKey && (
        <>
          <p>{w.thisKey}</p>
          <p className={styles.print} data-testid="fingerprint">
            {fingerprint(deviceKey)}
          </p>
        </>
      )}
      <Known trusted={trusted} />
      <NewKey offered={offered} isKnown={(key) => trusted.some((one) => one.key === key)} />
      {list.length > 0 && (
        <div className={acts.acts}>
          <button
            type="button"
            onClick={() => handOver.save("gloveside-trusted.json", listText(list), "application/json")}
          >
            {w.saveKeys}
          </button>
          <p className={acts.note}>{w.saveKeysHint}</p>
        </div>
      )}
      <TakeKeys trusted={trusted} ownKey={deviceKey} />
    </Section>
  );
}

function Known({ trusted }: { trusted: readonly TrustedKey[] }) {
  const { language } = useShared();
  const { keeping: w } = archiveWords(language);
  const studio = useStudioModel();
  if (trusted.length === 0) return <p data-testid="trusted">{w.noKeys}</p>;
  return (
    <ul className={acts.rows} data-testid="trusted">
      {trusted.map(({ key, name }) => (
        <li key={key} data-mark="good">
          <div>
            <b>{name}</b>
            <small className={styles.print}>{fingerprint(key)}</small>
          </div>
          <div className={acts.acts}>
            <button
              type="button"
              onClick={() => void studio.keep(w.keyRemoved(name), [{ kind: "trusted", id: key, value: null }])}
            >
              {w.removeKey(name)}
            </button>
          </div>
        </li>
      ))}
    </ul>
  );
}

function NewKey({ offered, isKnown }: { offered: string | null; isKnown: (key: string) => boolean }) {
  const { language } = useShared();
  const { keeping: w } = archiveWords(language);
  const studio = useStudioModel();
  const [name, setName] = useState("");
  const [written, setWritten] = useState("");
  useEffect(() => {
    if (offered !== null) setWritten(fingerprint(offered));
  }, [offered]);
  const key = keyFrom(written);
  const trouble = written === "" ? null : key === null ? w.notAKey : isKnown(key) ? w.keyKnown : null;
  const add = () => {
    if (key === null) return;
    const value = { key, name: name.trim() };
    void studio.keep(w.keyAdded(value.name), [{ kind: "trusted", id: key, value }]);
    setName("");
    setWritten("");
  };
  return (
    <>
      <div className={fields.fields}>
        <Entry label={w.keyName} value={name} maxLength={80} onChange={setName} />
        <Entry label={w.fingerprint} value={written} hint={w.fingerprintHint} trouble={trouble} onChange={setWritten} />
      </div>
      <div className={acts.acts}>
        <button type="button" disabled={key === null || trouble !== null || name.trim() === ""} onClick={add}>
          {w.addKey}
        </button>
      </div>
    </>
  );
}
