/** The products of the protocol with what stands on their labels. */
import { useState } from "react";
import type { Edit } from "../../drafting/edit";
import { newProduct } from "../../drafting/fresh";
import { Label, ProductSlot } from "../../session/protocol";
import { Tick } from "../prepare/Field";
import { Select } from "../sums/parts/Entry";
import { readSeconds, showSeconds } from "../sums/parts/seconds";
import { useShared } from "../useModel";
import { BothTexts, DraftText } from "./DraftText";
import { Part } from "./Part";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useText } from "./useText";

export function ProductsPart() {
  const w = useShared().words.protocols;
  const text = useText();
  const e = w.editor;
  const { protocol, edit, isReadOnly } = useEditor();
  const [open, setOpen] = useState<string | null>(null);
  const add = () => {
    const product = newProduct(protocol, e.productForm.fresh);
    edit({ do: "addProduct", product });
    setOpen(product.id);
  };
  return (
    <Part id="products" title={e.products} about={e.things(protocol.products.length)} hint={e.productsHint}>
      <ul className={styles.steps} data-testid="products">
        {protocol.products.map((slot) => {
          const isOpen = open === slot.id;
          return (
            <li key={slot.id} className={styles.step} data-product={slot.id}>
              <div className={styles.row}>
                <button
                  type="button"
                  className={styles.title}
                  aria-expanded={isOpen}
                  onClick={() => setOpen(isOpen ? null : slot.id)}
                >
                  <b>{text(slot.label.name)}</b>
                  <small>
                    {w.uses[slot.use]}, {showSeconds(slot.label.contactSec)}
                  </small>
                </button>
                {!isReadOnly && (
                  <span className={styles.acts}>
                    <button
                      type="button"
                      aria-label={e.removeOf(text(slot.label.name))}
                      onClick={() => edit({ do: "removeProduct", product: slot.id })}
                    >
                      {e.remove}
                    </button>
                  </span>
                )}
              </div>
              {isOpen && <ProductForm slot={slot} />}
            </li>
          );
        })}
      </ul>
      {!isReadOnly && (
        <div className={styles.acts}>
          <button type="button" onClick={add}>
            {e.productForm.add}
          </button>
        </div>
      )}
    </Part>
  );
}

type LabelPart = Extract<Edit, { do: "changeLabel" }>["part"];

function ProductForm({ slot }: { slot: ProductSlot }) {
  const w = useShared().words.protocols;
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
