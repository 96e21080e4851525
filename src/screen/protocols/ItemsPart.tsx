/** The items of the protocol: everything that can carry contamination, each with its form. */
import { effectsNaming } from "../../drafting/editThings";
import { newItem } from "../../drafting/fresh";
import { ItemForm } from "./ItemForm";
import { Part } from "./Part";
import styles from "./Protocols.module.css";
import { type Thing, ThingRows } from "./ThingRows";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

export function ItemsPart() {
  const w = useProtocolWords();
  const text = useText();
  const e = w.editor;
  const { protocol, edit, isReadOnly } = useEditor();
  const add = (): string => {
    const item = newItem(protocol, e.itemForm.fresh);
    edit({ do: "addItem", item });
    return item.id;
  };
  const things = protocol.items.map((item): Thing => {
    const named = effectsNaming(protocol, item.id);
    return {
      id: item.id,
      name: text(item.name),
      about: `${w.roles[item.role]}, ${w.classes[item.spaulding]}. ${e.itemForm.uses[item.use]}.`,
      remove: () => edit({ do: "removeItem", item: item.id }),
      form: (renamed) => (
        <>
          {!isReadOnly && named > 0 && <p className={styles.note}>{e.itemForm.goesWith(named)}</p>}
          <ItemForm item={item} renamed={renamed} />
        </>
      ),
    };
  });
  return (
    <Part id="items" title={e.items} about={e.things(things.length)} hint={e.itemsHint}>
      <ThingRows testId="items" things={things} addWords={e.itemForm.add} add={add} />
    </Part>
  );
}
