/** One lot on the shelf: how much there is now, its dates. What is typed as the amount is a fresh count. */
import { type FormEvent, useState } from "react";
import type { Product, Stock } from "../../../shelf/product";
import fields from "../../prepare/Prepare.module.css";
import acts from "../parts/Acts.module.css";
import { Entry, Select } from "../parts/Entry";
import { readWhole } from "../parts/seconds";
import { useSumWords } from "../useSumWords";

interface Props {
  readonly id: string;
  readonly products: readonly Product[];
  /** The line to change, with what is left of it. */
  readonly line?: Stock;
  /** `isCounted`: the amount was typed afresh. */
  readonly keep: (line: Stock, isCounted: boolean) => Promise<string | null>;
  readonly close: () => void;
}

export function StockForm({ id, products, line, keep, close }: Props) {
  const w = useSumWords().shelf.stock;
  const [productId, setProduct] = useState(line?.productId ?? products[0]?.id ?? "");
  const [lot, setLot] = useState(line?.lot ?? "");
  const [expiry, setExpiry] = useState(line?.expiry ?? "");
  const [openedOn, setOpened] = useState(line?.openedOn ?? "");
  const [quantity, setQuantity] = useState(line ? String(line.quantity) : "");
  const [isTried, setTried] = useState(false);
  const [refused, setRefused] = useState<string | null>(null);
  const product = products.find((one) => one.id === productId);
  const amount = readWhole(quantity);
  const isRight = amount !== null && amount <= 1_000_000;

  const submit = async (submitted: FormEvent) => {
    submitted.preventDefault();
    setTried(true);
    if (!isRight || !product) return;
    const kept: Stock = {
      ...{ id, productId, lot: lot.trim() || null, expiry: expiry || null, openedOn: openedOn || null },
      quantity: amount,
    };
    const trouble = await keep(kept, amount !== line?.quantity);
    setRefused(trouble);
    if (trouble === null) close();
  };

  return (
    <form onSubmit={submit} noValidate>
      <fieldset className={acts.form}>
        <legend>{line ? w.change(product?.name ?? "") : w.add}</legend>
        <div className={fields.fields}>
          {!line && (
            <Select
              label={w.product}
              value={productId}
              options={products.map(({ id, name }) => [id, name] as const)}
              onChange={setProduct}
            />
          )}
          <Entry
            isNumeric
            label={product ? w.amountIn(product.unit) : w.amount}
            hint={w.amountHint}
            value={quantity}
            trouble={isTried && !isRight ? w.notWhole : null}
            onChange={setQuantity}
          />
          <Entry label={w.lot} maxLength={40} value={lot} onChange={setLot} />
          <Entry type="date" label={w.expiry} value={expiry} onChange={setExpiry} />
          <Entry type="date" label={w.openedOn} hint={w.openedHint} value={openedOn} onChange={setOpened} />
        </div>
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
