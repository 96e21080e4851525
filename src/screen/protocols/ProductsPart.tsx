/** The products of the protocol with what stands on their labels. */
import type { Edit } from "../../drafting/edit";
import { newProduct } from "../../drafting/fresh";
import { Label, ProductSlot } from "../../session/protocol";
import { Tick } from "../prepare/Field";
import { Select } from "../sums/parts/Entry";
import { readSeconds, showSeconds } from "../sums/parts/seconds";
import { BothTexts, DraftText } from "./DraftText";
import { Part } from "./Part";
import styles from "./Protocols.module.css";
import { type Thing, ThingRows } from "./ThingRows";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

export function ProductsPart() {
  const w = useProtocolWords();
  const text = useText();
  const e = w.editor;
  const { protocol, edit } = useEditor();
  const add = (): string => {
    const product = newProduct(protocol, e.productForm.fresh);
    edit({ do: "addProduct", product });
    return product.id;
  };
  const things = protocol.products.map(
    (slot): Thing => ({
      id: slot.id,
      name: text(slot.label.name),
      about: `${w.uses[slot.use]}, ${showSeconds(slot.label.contactSec)}`,
      remove: () => edit({ do: "removeProduct", product: slot.id }),
      form: () => <ProductForm slot={slot} />,
    }),
  );
  return (
    <Part id="products" title={e.products} about={e.things(things.length)} hint={e.productsHint}>
      <ThingRows testId="products" things={things} addWords={e.productForm.add} add={add} />
    </Part>
  );
}

type LabelPart = Extract<Edit, { do: "changeLabel" }>["part"];

function ProductForm({ slot }: { slot: ProductSlot }) {
  const w = useProtocolWords();
  const text = useText();
  const f = w.editor.productForm;
  const { edit, isReadOnly } = useEditor();
  const { label } = slot;
  const changeOf = (part: LabelPart): Edit => ({ do: "changeLabel", product: slot.id, part });
  const time = (text: string, make: (seconds: number) => LabelPart): Edit | string => {
    const seconds = readSeconds(text);
    return seconds === null ? f.notATime : changeOf(make(seconds));
  };
  return (
    <fieldset className={styles.form} disabled={isReadOnly} data-testid={`product-${slot.id}`}>
      <legend className={styles.hiddenWords}>{text(label.name)}</legend>
      <div className={styles.fields}>
        <BothTexts label={f.name} value={label.name} editFor={(name) => changeOf({ name })} />
        <Select
          label={f.use}
          value={slot.use}
          options={ProductSlot.shape.use.options.map((use) => [use, w.uses[use]] as const)}
          onChange={(use) => edit({ do: "changeProduct", product: slot.id, part: { use } })}
        />
        <DraftText
          label={f.contact}
          hint={f.contactHint}
          value={showSeconds(label.contactSec)}
          editFor={(text) => time(text, (contactSec) => ({ contactSec }))}
        />
        <DraftText
          label={f.reapply}
          hint={f.reapplyHint}
          value={label.reapplyWithinSec === null ? "" : showSeconds(label.reapplyWithinSec)}
          editFor={(text) =>
            text.trim() === "" ? changeOf({ reapplyWithinSec: null }) : time(text, (s) => ({ reapplyWithinSec: s }))
          }
        />
        <Select
          label={f.afterwards}
          value={label.afterwards}
          options={Label.shape.afterwards.options.map((next) => [next, w.afterwards[next]] as const)}
          onChange={(afterwards) => edit(changeOf({ afterwards }))}
        />
        <DraftText
          type="date"
          label={f.expiry}
          value={label.expiry ?? ""}
          editFor={(text) => changeOf({ expiry: text === "" ? null : text })}
        />
      </div>
      <Tick label={f.oneStep} checked={label.oneStep} onChange={(oneStep) => edit(changeOf({ oneStep }))} />
    </fieldset>
  );
}
