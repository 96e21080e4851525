/** A product and the facts of its label, new or changed. */
import { type FormEvent, useState } from "react";
import type { Product } from "../../../shelf/product";
import { Choice, Tick } from "../../prepare/Field";
import fields from "../../prepare/Prepare.module.css";
import acts from "../parts/Acts.module.css";
import { Entry, Select } from "../parts/Entry";
import { useSumWords } from "../useSumWords";
import {
  emptyProduct,
  hasLabel,
  type ProductDraft,
  type ProductField,
  productDraftOf,
  productFrom,
} from "./productDraft";

interface Props {
  readonly id: string;
  /** The one to change; without, a new one. */
  readonly product?: Product;
  readonly keep: (product: Product) => Promise<string | null>;
  readonly close: () => void;
}

export const productKinds = ["disinfectant", "antiseptic", "ink", "needle", "single-use", "indicator"] as const;
const units = ["mL", "g", "piece", "tablet"] as const;

export function ProductForm({ id, product, keep, close }: Props) {
  const w = useSumWords().shelf.product;
  const [draft, setDraft] = useState<ProductDraft>(product ? productDraftOf(product) : emptyProduct);
  const [isTried, setTried] = useState(false);
  const [refused, setRefused] = useState<string | null>(null);
  const set = (part: Partial<ProductDraft>) => setDraft((now) => ({ ...now, ...part }));
  const found = productFrom(draft, id);
  const at = (field: ProductField) => {
    const trouble = isTried && !found.ok ? found.troubles[field] : undefined;
    return trouble ? w.troubles[trouble] : null;
  };
  const text = (field: Exclude<ProductField, "times">) => ({
    value: draft[field],
    trouble: at(field),
    onChange: (value: string) => set({ [field]: value }),
  });
  const submit = async (submitted: FormEvent) => {
    submitted.preventDefault();
    setTried(true);
    if (!found.ok) return;
    const trouble = await keep(found.product);
    setRefused(trouble);
    if (trouble === null) close();
  };
  const isLabelled = hasLabel(draft.kind);
  const last = draft.times.at(-1);
  const rows =
    last && last.use === "" && last.contact === "" ? draft.times : [...draft.times, { use: "", contact: "" }];
  const setTime = (row: number, part: { use?: string; contact?: string }) =>
    set({ times: rows.map((time, place) => (place === row ? { ...time, ...part } : time)) });

  return (
    <form onSubmit={submit} noValidate>
      <fieldset className={acts.form}>
        <legend>{product ? w.change(product.name) : w.add}</legend>
        <div className={fields.fields}>
          <Entry label={w.name} maxLength={100} {...text("name")} />
          <Select
            label={w.kind}
            value={draft.kind}
            options={productKinds.map((kind) => [kind, w.kinds[kind]] as const)}
            onChange={(kind) =>
              set({ kind, unit: kind === "needle" || kind === "single-use" || kind === "indicator" ? "piece" : "mL" })
            }
          />
          <Select
            label={w.unit}
            value={draft.unit}
            options={units.map((unit) => [unit, w.units[unit]] as const)}
            onChange={(unit) => set({ unit })}
          />
          <Entry isNumeric label={w.orderBelow} {...text("orderBelow")} />
          <Entry isNumeric label={w.orderTo} {...text("orderTo")} />
          <Entry isNumeric label={w.daysAfterOpening} hint={w.emptyWhere} {...text("daysAfterOpening")} />
        </div>
        {isLabelled && (
          <>
            <div className={fields.fields}>
              {rows.map((time, row) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place
                <div key={row} className={fields.fields}>
                  <Entry
                    label={w.use(row + 1)}
                    maxLength={60}
                    value={time.use}
                    onChange={(use) => setTime(row, { use })}
                  />
                  <Entry
                    label={w.contact(row + 1)}
                    hint={w.contactHint}
                    value={time.contact}
                    trouble={row === 0 ? at("times") : null}
                    onChange={(contact) => setTime(row, { contact })}
                  />
                </div>
              ))}
              <Entry label={w.reapply} hint={w.emptyWhere} {...text("reapply")} />
              <Entry isNumeric label={w.hoursDiluted} hint={w.hoursDilutedHint} {...text("hoursDiluted")} />
            </div>
            <Tick label={w.cleanFirst} checked={draft.cleanFirst} onChange={(cleanFirst) => set({ cleanFirst })} />
            <Tick label={w.rinseAfter} checked={draft.rinseAfter} onChange={(rinseAfter) => set({ rinseAfter })} />
            <Choice
              label={w.known}
              value={draft.known}
              options={[
                ["label", w.knownLabel],
                ["artist", w.knownArtist],
              ]}
              onChange={(known) => set({ known })}
            />
          </>
        )}
        <div role="alert">{refused}</div>
        <div className={acts.acts}>
          <button type="submit" className={acts.main}>
            {w.keep}
          </button>
          <button type="button" onClick={close}>
            {w.cancel}
          </button>
        </div>
      </fieldset>
    </form>
  );
}
