/** Things of one kind, a row each that opens its form, is taken out, and the way to add one. Used for items and products. */
import { type ReactNode, useState } from "react";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";

export interface Thing {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly remove: () => void;
  /** @param renamed told the id that the thing has from now on, so that its form stays open */
  readonly form: (renamed: (id: string) => void) => ReactNode;
}

interface Props {
  readonly testId: string;
  readonly things: readonly Thing[];
  readonly addWords: string;
  /** @returns the id of what was added. */
  readonly add: () => string;
}

export function ThingRows({ testId, things, addWords, add }: Props) {
  const e = useProtocolWords().editor;
  const { isReadOnly } = useEditor();
  const [open, setOpen] = useState<string | null>(null);
  return (
    <>
      <ul className={styles.steps} data-testid={testId}>
        {things.map(({ id, name, about, remove, form }) => (
          <li key={id} className={styles.step} data-thing={id}>
            <div className={styles.row}>
              <button
                type="button"
                className={styles.title}
                aria-expanded={open === id}
                onClick={() => setOpen(open === id ? null : id)}
              >
                <b>{name}</b>
                <small>{about}</small>
              </button>
              {!isReadOnly && (
                <span className={styles.acts}>
                  <button type="button" aria-label={e.removeOf(name)} onClick={remove}>
                    {e.remove}
                  </button>
                </span>
              )}
            </div>
            {open === id && form(setOpen)}
          </li>
        ))}
      </ul>
      {!isReadOnly && (
        <div className={styles.acts}>
          <button type="button" onClick={() => setOpen(add())}>
            {addWords}
          </button>
        </div>
      )}
    </>
  );
}
