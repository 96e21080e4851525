/** All protocols of this device: the studio's own, drafts, and those that come with the companion. */
import { useRef, useSyncExternalStore } from "react";
import { copyOf } from "../../drafting/fresh";
import { showWall } from "../../due/zone";
import type { Protocol } from "../../session/protocol";
import { bundledProtocols } from "../../session/protocols";
import { Working } from "../marks/Working";
import type { Importing } from "../model";
import { addressOf } from "../pages/page";
import { Section } from "../prepare/Field";
import acts from "../sums/parts/Acts.module.css";
import { useStudio, useStudioModel } from "../sums/useStudio";
import { useShared } from "../useModel";
import { AddedWords } from "./AddedWords";
import { EditLink, ProtocolRow, ProtocolRows } from "./ProtocolRow";
import styles from "./Protocols.module.css";
import type { ProtocolsModel } from "./protocolsModel";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

interface Props {
  readonly protocols: ProtocolsModel;
  readonly importing: Importing;
  readonly zone: string;
}

export function ProtocolList({ protocols, importing, zone }: Props) {
  const { asks } = useShared();
  const text = useText();
  const w = useProtocolWords();
  const studio = useStudio();
  const keeping = useStudioModel();
  const file = useRef<HTMLInputElement>(null);
  const own = [...studio.protocol.values()].map(({ protocol }) => protocol);
  const drafts = [...studio.protocolDraft.values()];
  // Drawn again when one has been proved again.
  const standings = useSyncExternalStore(protocols.subscribe, () => own.map(({ id }) => protocols.standing(id)).join());
  const taken = new Set([
    ...bundledProtocols.map(({ id }) => id),
    ...studio.protocol.keys(),
    ...studio.protocolDraft.keys(),
  ]);
  const copy = async (protocol: Protocol) => {
    const made = copyOf(protocol, { en: w.list.copyName(text(protocol.name)) }, taken);
    if ((await protocols.keepDraft(made, null)) === null) location.hash = addressOf("protocols", made.id);
  };
  const remove = (kind: "protocol" | "protocolDraft", { id, name }: Protocol) =>
    void keeping.keep(w.acts.removed(text(name)), [{ kind, id, value: null }]);
  const isChecking = importing.at === "checking";

  return (
    <>
      <Section title={w.list.own} hint={w.list.ownHint}>
        {own.length === 0 && <p>{w.list.noOwn}</p>}
        <ProtocolRows testId="own-protocols">
          {own.map((protocol, at) => {
            const standing = standings.split(",")[at] as ReturnType<ProtocolsModel["standing"]>;
            return (
              <ProtocolRow
                key={protocol.id}
                protocol={protocol}
                mark={standing === "proved" ? "good" : "bad"}
                more={w.list.standing[standing]}
                exportFile={protocols.exportFile}
                remove={() => remove("protocol", protocol)}
              >
                <EditLink protocol={protocol} />
              </ProtocolRow>
            );
          })}
        </ProtocolRows>
        <div className={acts.acts}>
          <button type="button" disabled={isChecking} onClick={() => file.current?.click()}>
            {isChecking ? w.list.checking : w.list.import}
          </button>
          {isChecking && <Working on={w.list.checking} />}
          <input
            ref={file}
            type="file"
            accept="application/json,.json"
            hidden
            data-testid="own-protocol-file"
            onChange={(chosen) => {
              const [first] = chosen.target.files ?? [];
              if (first) asks.addProtocol(first);
              chosen.target.value = "";
            }}
          />
        </div>
        <div role="alert">{importing.at === "added" && <AddedWords added={importing.added} />}</div>
      </Section>

      <Section title={w.list.drafts} hint={w.list.draftsHint}>
        {drafts.length === 0 && <p>{w.list.noDrafts}</p>}
        <ProtocolRows testId="drafts">
          {drafts.map(({ protocol, changedAtMs }) => (
            <ProtocolRow
              key={protocol.id}
              protocol={protocol}
              mark="soon"
              more={w.list.changed(showWall(changedAtMs, zone))}
              exportFile={protocols.exportFile}
              remove={() => remove("protocolDraft", protocol)}
            >
              <EditLink protocol={protocol} />
            </ProtocolRow>
          ))}
        </ProtocolRows>
      </Section>

      <Section title={w.list.bundled} hint={w.list.bundledHint}>
        <ProtocolRows testId="bundled">
          {bundledProtocols.map((protocol) => (
            <ProtocolRow
              key={protocol.id}
              protocol={protocol}
              more={text(protocol.about)}
              exportFile={protocols.exportFile}
            >
              <button type="button" aria-label={w.list.copyOf(text(protocol.name))} onClick={() => void copy(protocol)}>
                {w.list.copy}
              </button>
              <a
                className={styles.act}
                aria-label={w.list.lookOf(text(protocol.name))}
                href={addressOf("protocols", protocol.id)}
              >
                {w.list.look}
              </a>
            </ProtocolRow>
          ))}
        </ProtocolRows>
      </Section>
    </>
  );
}
