/**
 * At the foot of the studio's screens: whether the store answers, what was just done with its undo, what is being said,
 * and rows that cannot be read. The last act can be taken back from any of the screens but an
 * editor, whose undo is for its own draft; there it waits.
 */
import { useState } from "react";
import { useShared } from "../../useModel";
import { useSaying, useStudioModel, useStudioNow } from "../useStudio";
import styles from "./Kept.module.css";

/** @param isEditing the screen has an undo of its own, for what is being edited: one at a time */
export function Kept({ isEditing = false }: { isEditing?: boolean }) {
  const { words } = useShared();
  const w = words.kept;
  const studio = useStudioModel();
  const now = useStudioNow();
  const saying = useSaying();
  const [trouble, setTrouble] = useState<string | null>(null);
  const undo = now.at === "open" && !isEditing ? now.undo : null;
  return (
    <footer className={styles.kept}>
      <div role="status" className={styles.status} data-testid="kept">
        {undo !== null && <p>{w.done(undo)}</p>}
        {saying !== null && <p>{w.says(saying)}</p>}
      </div>
      {undo !== null && (
        <button type="button" onClick={async () => setTrouble(await studio.undo())}>
          {w.undo}
        </button>
      )}
      {saying !== null && (
        <button type="button" onClick={() => studio.hush()}>
          {w.hush}
        </button>
      )}
      <div role="alert">
        {now.at === "lost" && <p className={styles.trouble}>{now.words}</p>}
        {trouble !== null && <p className={styles.trouble}>{trouble}</p>}
      </div>
      {now.at === "open" && now.unreadable.length > 0 && (
        <div className={styles.trouble}>
          <p>{w.unreadable}</p>
          <ul>
            {now.unreadable.map(({ kind, id }) => (
              <li key={`${kind} ${id}`}>
                {kind} {id}
              </li>
            ))}
          </ul>
        </div>
      )}
    </footer>
  );
}
