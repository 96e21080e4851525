/** The studio's shelf: what runs out first stands first, what is left is counted from the records of this device. */
import { useState } from "react";
import { dateAt } from "../../../due/zone";
import type { Product, Stock } from "../../../shelf/product";
import { shelfView } from "../../../shelf/view";
import { countedSinceMs, leftOnShelf } from "../../../studio/consumption";
import type { Change } from "../../../studio/kinds";
import { nextNumber } from "../../../studio/studio";
import type { PageProps } from "../../pages/screens";
import { Section } from "../../prepare/Field";
import acts from "../parts/Acts.module.css";
import { Verdict } from "../parts/Verdict";
import { useNowMs, useRecords, useStudio, useStudioModel } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";
import { Mixes } from "./Mixes";
import { Needs } from "./Needs";
import { ProductForm } from "./ProductForm";
import { StockForm } from "./StockForm";
import { StockRows } from "./StockRows";

/** Which form is open. */
type Open = { readonly form: "product" | "stock"; readonly id: string | null } | null;

export function ShelfScreen({ view }: PageProps) {
  const sums = useSums();
  const w = useSumWords().shelf;
  const keeping = useStudioModel();
  const studio = useStudio();
  const today = dateAt(useNowMs(), view.zone);
  const records = useRecords(countedSinceMs(studio));
  const left = leftOnShelf(studio, records?.ok ? records.value : []);
  const shown = shelfView(left.shelf, today, [], { phrases: sums });
  const [open, setOpen] = useState<Open>(null);
  const close = () => setOpen(null);
  const products = [...studio.product.values()];

  const keepProduct = (product: Product) =>
    keeping.keep(w.acts.product(product.name), [{ kind: "product", id: product.id, value: product }]);
  const keepLine = (line: Stock, isCounted: boolean) => {
    const before = studio.stock.get(line.id);
    const value =
      before && !isCounted
        ? { line: { ...line, quantity: before.line.quantity }, countedAtMs: before.countedAtMs }
        : { line, countedAtMs: Date.now() };
    return keeping.keep(w.acts.stock(nameOf(line.productId)), [{ kind: "stock", id: line.id, value }]);
  };
  const nameOf = (productId: string): string => studio.product.get(productId)?.name ?? productId;
  const removeProduct = ({ id, name }: Product) => {
    const lines = [...studio.stock.values()].filter(({ line }) => line.productId === id);
    const changes: Change[] = [
      { kind: "product", id, value: null },
      ...lines.map(({ line }): Change => ({ kind: "stock", id: line.id, value: null })),
    ];
    void keeping.keep(w.acts.removed(name), changes);
  };

  return (
    <>
      <Section title={w.warnings}>
        {records && !records.ok && <Verdict tone="no">{w.recordsLost(records.words)}</Verdict>}
        {shown.warnings.length === 0 ? (
          <p>{products.length === 0 ? w.empty : w.noWarnings}</p>
        ) : (
          <ul className={acts.rows} data-testid="warnings">
            {shown.warnings.map(({ stockId, code, words: warning }) => (
              <li key={stockId} data-mark={code === "expired" || code === "open-too-long" ? "bad" : "soon"}>
                <span>
                  <em>{w.codes[code]}</em> {warning}
                </span>
              </li>
            ))}
          </ul>
        )}
      </Section>

      <Section title={w.there} hint={records === null ? w.counting : w.countedFrom(left.sessions)}>
        <StockRows
          rows={shown.rows}
          change={(id) => setOpen({ form: "stock", id })}
          remove={(id) => {
            const line = studio.stock.get(id)?.line;
            if (line) void keeping.keep(w.acts.removed(nameOf(line.productId)), [{ kind: "stock", id, value: null }]);
          }}
        />
        {[...left.beyond].map(([productId, over]) => (
          <p key={productId}>{w.beyond(nameOf(productId), over)}</p>
        ))}
        {open?.form === "stock" && (
          <StockForm
            key={open.id}
            id={open.id ?? nextNumber("S", studio.stock.keys())}
            products={products}
            {...lineOf(left.shelf.stock, open.id)}
            keep={keepLine}
            close={close}
          />
        )}
        <div className={acts.acts}>
          <button type="button" disabled={products.length === 0} onClick={() => setOpen({ form: "stock", id: null })}>
            {w.stock.add}
          </button>
        </div>
      </Section>

      <Section title={w.products} hint={w.productsHint}>
        <ul className={acts.rows}>
          {products.map((product) => (
            <li key={product.id}>
              <span>
                <b>{product.name}</b> <small>{w.product.kinds[product.kind]}</small>
              </span>
              <span className={acts.acts}>
                <button
                  type="button"
                  aria-label={w.changeOf(product.name)}
                  onClick={() => setOpen({ form: "product", id: product.id })}
                >
                  {w.change}
                </button>
                <button type="button" aria-label={w.removeOf(product.name)} onClick={() => removeProduct(product)}>
                  {w.remove}
                </button>
              </span>
            </li>
          ))}
        </ul>
        {open?.form === "product" && (
          <ProductForm
            key={open.id}
            id={open.id ?? nextNumber("X", studio.product.keys())}
            {...productOf(studio.product, open.id)}
            keep={keepProduct}
            close={close}
          />
        )}
        <div className={acts.acts}>
          <button type="button" onClick={() => setOpen({ form: "product", id: null })}>
            {w.product.add}
          </button>
        </div>
      </Section>

      <Mixes zone={view.zone} />
      <Needs view={view} shelf={left.shelf} today={today} />
    </>
  );
}

const lineOf = (stock: readonly Stock[], id: string | null): { line?: Stock } => {
  const line = stock.find((one) => one.id === id);
  return line ? { line } : {};
};

const productOf = (products: ReadonlyMap<string, Product>, id: string | null): { product?: Product } => {
  const product = id === null ? undefined : products.get(id);
  return product ? { product } : {};
};
