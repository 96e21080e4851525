/** The shelf as rows to show: what there is, through which day, what is wrong with it, what the next session lacks. */
import { type CivilDate, showDate } from "../due/calendar";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { type Need, type NeedRow, needsAgainstShelf, type ReorderRow, reorderList } from "./count";
import type { Shelf } from "./product";
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
export function shelfView(
  shelf: Shelf,
  today: CivilDate,
  needs: readonly Need[] = [],
  { aheadDays = 30, phrases = sumsEn }: { aheadDays?: number; phrases?: SumPhrases } = {},
): ShelfView {
  const say = phrases.shelf;
  const warnings = shelfWarnings(shelf, today, aheadDays, phrases);
  const warned = new Map(warnings.map((warning) => [warning.stockId, warning.code]));
  const products = new Map(shelf.products.map((product) => [product.id, product]));
  const needRows = needsAgainstShelf(needs, shelf, today);
  return {
    rows: shelf.stock.flatMap((stock): ShelfRow[] => {
      const product = products.get(stock.productId);
      if (!product) return [];
      const limit = limitOf(stock, product);
      const through = limit && say[limit.because === "opened" ? "throughOpened" : "through"](showDate(limit.through));
      return [
        {
          stockId: stock.id,
          name: product.name,
          lot: stock.lot ?? say.noLot,
          quantity: say.counted(stock.quantity, product.unit),
          usable: through ?? say.noExpiry,
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
      say,
    ),
  };
}

function spokenFor(short: readonly NeedRow[], warnings: readonly ShelfWarning[], say: SumPhrases["shelf"]): string {
  const past = warnings.filter((warning) => warning.code === "expired" || warning.code === "open-too-long").length;
  const list = short.map((row) => `${row.name}, ${row.short}`).join("; ");
  const missing = short.length === 0 ? say.nothingMissing : say.missing(list);
  return past === 0 ? `${missing}.` : `${missing}. ${say.pastDate(past)}`;
}
