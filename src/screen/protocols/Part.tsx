/** A part of the protocol that folds away: its name, how much is in it, and whether something was found there. */
import type { ReactNode } from "react";
import { headId } from "./ids";
import styles from "./Protocols.module.css";
import { type PartId, useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";

interface Props {
  readonly id: PartId;
  readonly title: string;
  readonly about: string;
  readonly found?: number;
  readonly hint?: string;
  readonly level?: "h3" | "h4";
  readonly children: ReactNode;
}

export function Part({ id, title, about, found = 0, hint, level: Level = "h3", children }: Props) {
  const w = useProtocolWords().editor;
  const { openParts, openPart } = useEditor();
  const isOpen = openParts.has(id);
  return (
    <section className={styles.part} data-part={id}>
      <Level>
        <button type="button" id={headId(id)} aria-expanded={isOpen} onClick={() => openPart(id, !isOpen)}>
          <span>{title}</span>
          <small>
            {about}
            {found > 0 && <em>{w.found(found)}</em>}
          </small>
        </button>
      </Level>
      {isOpen && (
        <div className={styles.inside}>
          {hint && <p className={styles.note}>{hint}</p>}
          {children}
        </div>
      )}
    </section>
  );
}
