/** The list of devices whose records this studio trusts, and this device's own key to compare on another. */
import { type FormEvent, useEffect, useState, useSyncExternalStore } from "react";
import { fingerprint } from "../../log/signing";
import { Field } from "../prepare/Field";
import { useShared } from "../useModel";
import styles from "./TrustedDevices.module.css";

interface Props {
  /** The key of the record just checked, where it is not trusted yet. */
  readonly offered: string | null;
  readonly changed: () => void;
}

export function TrustedDevices({ offered, changed }: Props) {
  const { handOver, words } = useShared();
  const w = words.papers.verify;
  const list = useSyncExternalStore(handOver.trusted.subscribe, () => handOver.trusted.now);
  const [name, setName] = useState("");
  const [key, setKey] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    if (offered !== null) setKey(fingerprint(offered));
  }, [offered]);

  const add = (event: FormEvent) => {
    event.preventDefault();
    const refused = handOver.trust(name, key);
    setTrouble(refused === null ? null : w[texts[refused]]);
    if (refused !== null) return;
    setName("");
    setKey("");
    changed();
  };
  return (
    <div className={styles.devices}>
      {handOver.deviceKey && (
        <p>
          <b>{w.thisDevice}</b> <code data-testid="own-key">{fingerprint(handOver.deviceKey)}</code>
        </p>
      )}
      {list.length === 0 ? (
        <p>{w.none}</p>
      ) : (
        <ul>
          {list.map((one) => (
            <li key={one.key}>
              <span>
                <b>{one.name}</b> <code>{fingerprint(one.key)}</code>
              </span>
              <button
                type="button"
                onClick={() => {
                  handOver.distrust(one.key);
                  changed();
                }}
              >
                {w.remove(one.name)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <form onSubmit={add}>
        <Field label={w.name} value={name} onChange={setName} />
        <Field label={w.key} value={key} onChange={setKey} />
        {trouble && <p role="alert">{trouble}</p>}
        <button type="submit">{w.add}</button>
      </form>
    </div>
  );
}

const texts = {
  "key-wrong": "keyWrong",
  "key-known": "keyKnown",
  "name-missing": "nameMissing",
  "list-full": "listFull",
  notKept: "notKept",
} as const;
