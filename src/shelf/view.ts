/** The shelf as rows to show: what there is, through which day, what is wrong with it, what the next session lacks. */
import { type CivilDate, showDate } from "../due/calendar";
import { type Need, type NeedRow, needsAgainstShelf, type ReorderRow, reorderList } from "./count";
import type { Product, Shelf } from "./product";
import { limitOf, type ShelfWarning, shelfWarnings } from "./usable";

export type ShelfRow = {
  readonly stockId: string;
  readonly name: string;
  readonly lot: string;
  /** "500 mL" */
  readonly quantity: string;
  /** "through 2027-06-30", "through 2027-01-30 (opened)" or "no expiry known" */
  readonly usable: string;
  readonly warning: ShelfWarning["code"] | null;
};

export type ShelfView = {
  readonly rows: readonly ShelfRow[];
  readonly warnings: readonly ShelfWarning[];
  readonly needs: readonly NeedRow[];
  readonly reorder: readonly ReorderRow[];
  /** The one answer by voice to "what is missing". */
  readonly spoken: string;
};

/** @param needs what the chosen protocol will use up; empty when none is chosen. */
export function shelfView(shelf: Shelf, today: CivilDate, needs: readonly Need[] = [], aheadDays = 30): ShelfView {
  const warnings = shelfWarnings(shelf, today, aheadDays);
  const warned = new Map(warnings.map((warning) => [warning.stockId, warning.code]));
  const products = new Map(shelf.products.map((product) => [product.id, product]));
  const needRows = needsAgainstShelf(needs, shelf, today);
  return {
    rows: shelf.stock.flatMap((stock): ShelfRow[] => {
      const product = products.get(stock.productId);
      if (!product) return [];
      const limit = limitOf(stock, product);
      const through = limit && `through ${showDate(limit.through)}${limit.because === "opened" ? " (opened)" : ""}`;
      return [
        {
          stockId: stock.id,
          name: product.name,
          lot: stock.lot ?? "no lot",
          quantity: `${stock.quantity} ${counted(product.unit, stock.quantity)}`,
          usable: through ?? "no expiry known",
          warning: warned.get(stock.id) ?? null,
        },
      ];
    }),
    warnings,
    needs: needRows,
    reorder: reorderList(shelf, today, needs),
    spoken: spokenFor(
      needRows.filter((row) => row.short > 0),
      warnings,
    ),
  };
}

/** "6 pieces", "1 tablet", "500 mL". */
function counted(unit: Product["unit"], quantity: number): string {
  return (unit === "piece" || unit === "tablet") && quantity !== 1 ? `${unit}s` : unit;
}

function spokenFor(short: readonly NeedRow[], warnings: readonly ShelfWarning[]): string {
  const past = warnings.filter((warning) => warning.code === "expired" || warning.code === "open-too-long").length;
  const missing =
    short.length === 0
      ? "Nothing is missing"
      : `Missing: ${short.map((row) => `${row.name}, ${row.short}`).join("; ")}`;
  return past === 0 ? `${missing}.` : `${missing}. ${past} out of date on the shelf.`;
}
