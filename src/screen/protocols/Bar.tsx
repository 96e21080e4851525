/** Always in sight: what the check says, what was just done and its undo, and the save with the version it will give. */
import { whyOf } from "../../check/story";
import { checkWordsFor } from "../../check/words";
import type { FieldTrouble } from "../../drafting/fieldTrouble";
import { redoable, undoable } from "../../drafting/history";
import { nextVersion } from "../../drafting/version";
import { addressOf } from "../pages/page";
import { useShared } from "../useModel";
import { checkWords } from "./checkWords";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

export function Bar({ trouble }: { trouble: FieldTrouble | null }) {
  const { language } = useShared();
  const w = useProtocolWords();
  const text = useText();
  const { editor, state, protocol, isReadOnly } = useEditor();
  const { history, saved, saving, notKept } = state;
  const undo = undoable(history);
  const redo = redoable(history);
  const version = nextVersion(saved, protocol);
  const save = async () => {
    const came = await editor.save((next) => w.acts.saved(text(next.name), next.version));
    if (came.kind === "proved" && undoable(editor.now.history) === "save") location.hash = addressOf("protocols");
  };
  const check = checkWords(w.editor.check, state.check, state.findings, (why) =>
    whyOf(checkWordsFor(language), protocol, why),
  );
  return (
    <section className={styles.bar} aria-label={w.editor.bar}>
      <div className={styles.said}>
        <p data-testid="check" data-tone={check.tone}>
          {check.words}
        </p>
        <p role="status" data-testid="done">
          {saving === "draft" ? w.editor.savedDraft(protocol.version) : undo && w.editor.done(w.undoOf[undo])}
        </p>
        <div role="alert">
          {trouble && <p className={styles.trouble}>{w.troubles[trouble.code](trouble.limit)}</p>}
          {notKept !== null && <p className={styles.trouble}>{w.editor.notKept(notKept)}</p>}
        </div>
      </div>
      {!isReadOnly && (
        <div className={styles.acts}>
          <button
            type="button"
            disabled={undo === null}
            aria-label={undo ? w.editor.undoOf(w.undoOf[undo]) : w.editor.undo}
            onClick={editor.undo}
          >
            {w.editor.undo}
          </button>
          <button
            type="button"
            disabled={redo === null}
            aria-label={redo ? w.editor.redoOf(w.undoOf[redo]) : w.editor.redo}
            onClick={editor.redo}
          >
            {w.editor.redo}
          </button>
          <button type="button" className={styles.main} disabled={saving === "running"} onClick={() => void save()}>
            {saving === "running" ? w.editor.saving : w.editor.save(version)}
          </button>
        </div>
      )}
    </section>
  );
}
