/** The protocol's name and lead, its version and its digest. */
import { nextVersion, protocolDigest } from "../../drafting/version";
import { BothTexts } from "./DraftText";
import { Part } from "./Part";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

export function AboutPart() {
  const w = useProtocolWords().editor;
  const text = useText();
  const { protocol, protocols, state, isReadOnly } = useEditor();
  const next = nextVersion(state.saved, protocol);
  const isOther = !isReadOnly && next !== protocol.version;
  return (
    <>
      <dl className={styles.facts}>
        <div>
          <dt>{w.version}</dt>
          <dd data-testid="version">
            {protocol.version} {isOther && <small>{w.versionNext(next)}</small>}
          </dd>
        </div>
        <div>
          <dt>{w.digest}</dt>
          <dd>
            <code data-testid="digest">{protocolDigest(protocol)}</code>
            <small>{w.digestHint}</small>
          </dd>
        </div>
      </dl>
      <div className={styles.acts}>
        <ExportButton
          onClick={() => protocols.exportFile({ ...protocol, version: isReadOnly ? protocol.version : next })}
        />
      </div>
      <Part id="about" title={w.name} about={text(protocol.name)}>
        <fieldset className={styles.bare} disabled={isReadOnly}>
          <legend className={styles.hiddenWords}>{w.name}</legend>
          <div className={styles.fields}>
            <BothTexts
              label={w.nameField}
              value={protocol.name}
              editFor={(name) => ({ do: "changeProtocol", part: { name } })}
            />
            <BothTexts
              label={w.aboutField}
              value={protocol.about}
              editFor={(about) => ({ do: "changeProtocol", part: { about } })}
            />
          </div>
        </fieldset>
      </Part>
    </>
  );
}

function ExportButton({ onClick }: { onClick: () => void }) {
  const w = useProtocolWords().list;
  return (
    <button type="button" onClick={onClick}>
      {w.export}
    </button>
  );
}
