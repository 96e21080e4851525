/** The items of the protocol: everything that can carry contamination, each with its form. */
import { useState } from "react";
import { effectsNaming } from "../../drafting/editThings";
import { newItem } from "../../drafting/fresh";
import { useShared } from "../useModel";
import { ItemForm } from "./ItemForm";
import { Part } from "./Part";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useText } from "./useText";

export function ItemsPart() {
  const w = useShared().words.protocols;
  const text = useText();
  const e = w.editor;
  const { protocol, edit, isReadOnly } = useEditor();
  const [open, setOpen] = useState<string | null>(null);
  const add = () => {
    const item = newItem(protocol, e.itemForm.fresh);
    edit({ do: "addItem", item });
    setOpen(item.id);
  };
  return (
    <Part id="items" title={e.items} about={e.things(protocol.items.length)} hint={e.itemsHint}>
      <ul className={styles.steps} data-testid="items">
        {protocol.items.map((item) => {
          const isOpen = open === item.id;
          const named = effectsNaming(protocol, item.id);
          return (
            <li key={item.id} className={styles.step} data-item={item.id}>
              <div className={styles.row}>
                <button
                  type="button"
                  className={styles.title}
                  aria-expanded={isOpen}
                  onClick={() => setOpen(isOpen ? null : item.id)}
                >
                  <b>{text(item.name)}</b>
                  <small>
                    {w.roles[item.role]}, {w.classes[item.spaulding]}. {e.itemForm.uses[item.use]}.
                  </small>
                </button>
                {!isReadOnly && (
                  <span className={styles.acts}>
                    <button
                      type="button"
                      aria-label={e.removeOf(text(item.name))}
                      onClick={() => edit({ do: "removeItem", item: item.id })}
                    >
                      {e.remove}
                    </button>
                  </span>
                )}
              </div>
              {isOpen && (
                <>
                  {!isReadOnly && named > 0 && <p className={styles.note}>{e.itemForm.goesWith(named)}</p>}
                  <ItemForm item={item} renamed={setOpen} />
                </>
              )}
            </li>
          );
        })}
      </ul>
      {!isReadOnly && (
        <div className={styles.acts}>
          <button type="button" onClick={add}>
            {e.itemForm.add}
          </button>
        </div>
      )}
    </Part>
  );
}
