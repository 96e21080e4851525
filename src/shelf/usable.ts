/**
 * May this be used today, and through which day: the sooner of the printed expiry and the days after opening, each
 * usable through the end of its day. Warnings come ahead of time, the most pressing first.
 */
import { addDays, type CivilDate, compareDates, parseDate, showDate } from "../due/calendar";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import type { Product, Shelf, Stock } from "./product";

export type Limit = { readonly through: CivilDate; readonly because: "expiry" | "opened" };

/** @returns null where neither an expiry nor a time after opening applies. */
export function limitOf(stock: Stock, product: Product): Limit | null {
  const expiry = read(stock.expiry);
  const opened = read(stock.openedOn);
  const days = product.label?.daysAfterOpening ?? null;
  const afterOpening = opened && days !== null ? addDays(opened, days) : null;
  if (expiry && (!afterOpening || compareDates(expiry, afterOpening) <= 0))
    return { through: expiry, because: "expiry" };
  return afterOpening && { through: afterOpening, because: "opened" };
}

export function isUsable(stock: Stock, product: Product, today: CivilDate): boolean {
  const limit = limitOf(stock, product);
  return limit === null || compareDates(today, limit.through) <= 0;
}

export type ShelfWarning = {
  readonly stockId: string;
  readonly code: "expired" | "open-too-long" | "expires-soon" | "open-ends-soon" | "expiry-unknown";
  /** Last day of use; null for `expiry-unknown`. */
  readonly through: CivilDate | null;
  readonly words: string;
};

/** @param aheadDays how long before the last day to begin warning. Empty stock warns of nothing. */
export function shelfWarnings(
  shelf: Shelf,
  today: CivilDate,
  aheadDays = 30,
  phrases: SumPhrases = sumsEn,
): readonly ShelfWarning[] {
  const say = phrases.shelf;
  const products = new Map(shelf.products.map((product) => [product.id, product]));
  return shelf.stock
    .flatMap((stock): ShelfWarning[] => {
      const product = products.get(stock.productId);
      const warning = product && stock.quantity > 0 ? warningFor(stock, product, { today, aheadDays, say }) : null;
      return warning ? [warning] : [];
    })
    .sort((a, b) => rank(a) - rank(b) || a.stockId.localeCompare(b.stockId, "en"));
}

interface Asked {
  readonly today: CivilDate;
  readonly aheadDays: number;
  readonly say: SumPhrases["shelf"];
}

function warningFor(stock: Stock, product: Product, { today, aheadDays, say }: Asked): ShelfWarning | null {
  const name = stock.lot === null ? product.name : say.ofLot(product.name, stock.lot);
  const limit = limitOf(stock, product);
  if (!limit) return { stockId: stock.id, code: "expiry-unknown", through: null, words: say.noExpiryOf(name) };
  const left = compareDates(limit.through, today);
  if (left > aheadDays) return null;
  const day = showDate(limit.through);
  const opened = limit.because === "opened";
  if (left < 0)
    return {
      stockId: stock.id,
      code: opened ? "open-too-long" : "expired",
      through: limit.through,
      words: say.notAfter(name, day),
    };
  return {
    stockId: stock.id,
    code: opened ? "open-ends-soon" : "expires-soon",
    through: limit.through,
    words: say.lastDay(name, day),
  };
}

function rank(warning: ShelfWarning): number {
  return warning.through ? compareDates(warning.through, { year: 1970, month: 1, day: 1 }) : Number.MAX_SAFE_INTEGER;
}

function read(day: string | null): CivilDate | null {
  const parsed = day === null ? null : parseDate(day);
  return parsed?.ok ? parsed.value : null;
}
