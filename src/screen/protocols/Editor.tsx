/** One protocol, open to be changed or looked at: where it stands, what was found, and its parts one below the other. */
import { useCallback, useEffect, useMemo, useState } from "react";
import type { Edit } from "../../drafting/edit";
import type { FieldTrouble } from "../../drafting/fieldTrouble";
import type { Protocol } from "../../session/protocol";
import { addressOf } from "../pages/page";
import { AboutPart } from "./AboutPart";
import { AtWork } from "./AtWork";
import { Bar } from "./Bar";
import { Found } from "./Found";
import { ItemsPart } from "./ItemsPart";
import { ListPart } from "./ListPart";
import { ProductsPart } from "./ProductsPart";
import styles from "./Protocols.module.css";
import type { ProtocolsModel } from "./protocolsModel";
import { EditorContext, type EditorShared, type PartId, useEditing, useEditorState } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

interface Props {
  readonly first: Protocol;
  readonly saved: Protocol | null;
  readonly isReadOnly: boolean;
  readonly protocols: ProtocolsModel;
}

export function Editor({ first, saved, isReadOnly, protocols }: Props) {
  const w = useProtocolWords();
  const text = useText();
  const editor = useEditing(first, saved, protocols);
  const state = useEditorState(editor);
  const [trouble, setTrouble] = useState<FieldTrouble | null>(null);
  const [openParts, setOpenParts] = useState<ReadonlySet<PartId>>(new Set<PartId>(["setUp"]));
  const [openStep, setOpenStep] = useState<string | null>(null);
  const [focus, setFocus] = useState<{ id: string } | null>(null);
  useEffect(() => {
    const wanted = focus && document.getElementById(focus.id);
    wanted?.scrollIntoView({ block: "center" });
    wanted?.focus({ preventScroll: true });
  }, [focus]);

  const edit = useCallback((change: Edit) => setTrouble(editor.edit(change)), [editor]);
  const openPart = useCallback((part: PartId, isOpen: boolean) => {
    setOpenParts((now) => new Set(isOpen ? [...now, part] : [...now].filter((one) => one !== part)));
  }, []);
  const focusOn = useCallback((id: string) => setFocus({ id }), []);
  const shared = useMemo(
    (): EditorShared => ({
      ...{ editor, state, protocol: state.history.present, protocols, isReadOnly },
      ...{ edit, openParts, openPart, openStep, setOpenStep, focusOn },
    }),
    [editor, state, protocols, isReadOnly, edit, openParts, openPart, openStep, focusOn],
  );

  return (
    <EditorContext value={shared}>
      <div className={styles.editor} data-testid="editor">
        <p>
          <a className={styles.back} href={addressOf("protocols")}>
            {w.list.back}
          </a>
        </p>
        <h2 className={styles.name}>{text(state.history.present.name)}</h2>
        {isReadOnly && <p className={styles.note}>{w.editor.readOnly}</p>}
        <p className={styles.note}>{w.editor.caution}</p>
        <Bar trouble={trouble} />
        <Found />
        <AboutPart />
        <ItemsPart />
        <ProductsPart />
        <ListPart place="setUp" />
        <AtWork />
        <ListPart place="dressing" />
        <ListPart place="breakdown" />
        <ListPart place="resuming" />
      </div>
    </EditorContext>
  );
}
