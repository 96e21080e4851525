/** An item's fields: what it is called, its class, its use, and how it is at the start. */
import type { Edit } from "../../drafting/edit";
import { Item } from "../../session/protocol";
import { Tick } from "../prepare/Field";
import { Select } from "../sums/parts/Entry";
import { BothTexts, DraftText } from "./DraftText";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

const { role, spaulding, use, starts } = Item.shape;

type Part = Extract<Edit, { do: "changeItem" }>["part"];

export function ItemForm({ item, renamed }: { item: Item; renamed: (id: string) => void }) {
  const w = useProtocolWords();
  const text = useText();
  const f = w.editor.itemForm;
  const { edit, isReadOnly } = useEditor();
  const changeOf = (part: Part): Edit => ({ do: "changeItem", item: item.id, part });
  const change = (part: Part) => edit(changeOf(part));
  const start = (part: Partial<Item["starts"]>) => change({ starts: { ...item.starts, ...part } });
  return (
    <fieldset className={styles.form} disabled={isReadOnly} data-testid={`item-${item.id}`}>
      <legend className={styles.hiddenWords}>{text(item.name)}</legend>
      <div className={styles.fields}>
        <BothTexts label={f.name} value={item.name} editFor={(name) => changeOf({ name })} />
        <BothTexts
          label={f.calledAs}
          hint={f.calledAsHint}
          value={item.calledAs}
          editFor={(calledAs) => changeOf({ calledAs })}
        />
        <Select
          label={f.role}
          value={item.role}
          options={role.options.map((one) => [one, w.roles[one]] as const)}
          onChange={(next) => change({ role: next })}
        />
        <Select
          label={f.spaulding}
          value={item.spaulding}
          options={spaulding.options.map((one) => [one, w.classes[one]] as const)}
          onChange={(next) => change({ spaulding: next })}
        />
        <Select
          label={f.use}
          value={item.use}
          options={use.options.map((one) => [one, f.uses[one]] as const)}
          onChange={(next) => change({ use: next })}
        />
        <Select
          label={f.condition}
          value={item.starts.condition}
          options={starts.shape.condition.options.map((one) => [one, f.conditions[one]] as const)}
          onChange={(condition) => start({ condition })}
        />
        <Select
          label={f.barrier}
          value={item.starts.barrier}
          options={(["none", "covered"] as const).map((one) => [one, f.barriers[one]] as const)}
          onChange={(barrier) => start({ barrier })}
        />
        <Select
          label={f.at}
          value={item.starts.at}
          options={(["station", "away"] as const).map((one) => [one, f.ats[one]] as const)}
          onChange={(at) => start({ at })}
        />
      </div>
      <Tick label={f.porous} checked={item.porous} onChange={(porous) => change({ porous })} />
      <Tick label={f.hasLot} checked={item.hasLot} onChange={(hasLot) => change({ hasLot })} />
      <div className={styles.fields}>
        <DraftText
          label={w.editor.step.id}
          hint={w.editor.step.idHint}
          value={item.id}
          editFor={(id) => {
            if (/^[a-z][A-Za-z0-9]{0,39}$/.test(id)) renamed(id);
            return changeOf({ id });
          }}
        />
      </div>
    </fieldset>
  );
}
