/** Which procedure: the bundled ones and the studio's own, proved ones only. A file is proved before it is offered. */
import { useRef } from "react";
import { everyStep } from "../../session/protocol";
import { Working } from "../marks/Working";
import type { PrepareView } from "../model";
import { AddedWords } from "../protocols/AddedWords";
import { useShared } from "../useModel";
import { Section } from "./Field";
import styles from "./ProtocolChoice.module.css";

interface Props {
  readonly view: PrepareView;
  readonly chosen: string;
  readonly choose: (id: string) => void;
}

export function ProtocolChoice({ view, chosen, choose }: Props) {
  const { words, asks, language } = useShared();
  const w = words.prepare;
  const file = useRef<HTMLInputElement>(null);
  const { importing } = view;
  return (
    <Section title={w.protocol}>
      <div className={styles.protocols} role="radiogroup" aria-label={w.protocol}>
        {view.protocols.map((protocol) => (
          <label key={protocol.id} className={styles.protocol}>
            <input type="radio" name="protocol" checked={protocol.id === chosen} onChange={() => choose(protocol.id)} />
            <span>
              <b>{protocol.name[language] ?? protocol.name.en}</b>
              <small>{protocol.about[language] ?? protocol.about.en}</small>
              <small>{w.about(everyStep(protocol).length, protocol.version)}</small>
            </span>
          </label>
        ))}
      </div>
      <div className={styles.import}>
        <button type="button" disabled={importing.at === "checking"} onClick={() => file.current?.click()}>
          {importing.at === "checking" ? w.checking : w.import}
        </button>
        {importing.at === "checking" && <Working on={w.checking} />}
        <input
          ref={file}
          type="file"
          accept="application/json,.json"
          hidden
          data-testid="protocol-file"
          onChange={(chosenFile) => {
            const [first] = chosenFile.target.files ?? [];
            if (first) asks.addProtocol(first);
            chosenFile.target.value = "";
          }}
        />
        <p>{w.importAbout}</p>
      </div>
      <div role="alert">{importing.at === "added" && <AddedWords added={importing.added} />}</div>
    </Section>
  );
}
