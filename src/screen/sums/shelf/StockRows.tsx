/** The lots on the shelf, one row each: how much is left and through which day it may be used. */
import type { ShelfRow } from "../../../shelf/view";
import acts from "../parts/Acts.module.css";
import { useSumWords } from "../useSumWords";

interface Props {
  readonly rows: readonly ShelfRow[];
  readonly change: (stockId: string) => void;
  readonly remove: (stockId: string) => void;
}

export function StockRows({ rows, change, remove }: Props) {
  const w = useSumWords().shelf;
  if (rows.length === 0) return <p>{w.noStock}</p>;
  return (
    <ul className={acts.rows} data-testid="stock">
      {rows.map(({ stockId, name, lot, quantity, usable, warning }) => (
        <li key={stockId} data-mark={markOf(warning)}>
          <span>
            <b>{name}</b>, {lot}
            <small>
              {w.left(quantity)}, {usable}
              {warning && `. ${w.codes[warning]}`}
            </small>
          </span>
          <span className={acts.acts}>
            <button type="button" aria-label={w.changeOf(`${name} ${lot}`)} onClick={() => change(stockId)}>
              {w.change}
            </button>
            <button type="button" aria-label={w.removeOf(`${name} ${lot}`)} onClick={() => remove(stockId)}>
              {w.remove}
            </button>
          </span>
        </li>
      ))}
    </ul>
  );
}

function markOf(warning: ShelfRow["warning"]): "good" | "soon" | "bad" {
  if (warning === null) return "good";
  return warning === "expired" || warning === "open-too-long" ? "bad" : "soon";
}
