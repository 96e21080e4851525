/** A protocol in a list: name, size, version and digest, and what can be done with it. */
import type { ReactNode } from "react";
import { protocolDigest } from "../../drafting/version";
import { everyStep, type Protocol } from "../../session/protocol";
import { addressOf } from "../pages/page";
import acts from "../sums/parts/Acts.module.css";
import styles from "./Protocols.module.css";
import type { ProtocolsModel } from "./protocolsModel";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

export const ProtocolRows = ({ testId, children }: { testId: string; children: ReactNode }) => (
  <ul className={`${acts.rows} ${styles.list}`} data-testid={testId}>
    {children}
  </ul>
);

interface Props {
  readonly protocol: Protocol;
  readonly more: string;
  readonly mark?: "good" | "bad" | "soon";
  readonly exportFile: ProtocolsModel["exportFile"];
  /** Missing: it cannot be removed. */
  readonly remove?: () => void;
  /** What can be done with it before all else: edited, or copied and looked at. */
  readonly children: ReactNode;
}

export function ProtocolRow({ protocol, more, mark, exportFile, remove, children }: Props) {
  const w = useProtocolWords().list;
  const text = useText();
  const name = text(protocol.name);
  return (
    <li data-mark={mark}>
      <span>
        <b>{name}</b>
        <small>{w.about(everyStep(protocol).length, protocol.version)}</small>
        <small>{w.digest(protocolDigest(protocol))}</small>
        <small>{more}</small>
      </span>
      <span className={acts.acts}>
        {children}
        <button type="button" aria-label={w.exportOf(name)} onClick={() => exportFile(protocol)}>
          {w.export}
        </button>
        {remove && (
          <button type="button" aria-label={w.removeOf(name)} onClick={remove}>
            {w.remove}
          </button>
        )}
      </span>
    </li>
  );
}

export function EditLink({ protocol }: { protocol: Protocol }) {
  const w = useProtocolWords().list;
  const text = useText();
  return (
    <a className={styles.act} aria-label={w.editOf(text(protocol.name))} href={addressOf("protocols", protocol.id)}>
      {w.edit}
    </a>
  );
}
