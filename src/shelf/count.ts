/**
 * What is left, what a session needs, and what to order. Consumption comes as plain data counted from the records; a
 * use is never refused for want of stock, it is counted as more than the shelf knew of.
 */
import { type CivilDate, compareDates } from "../due/calendar";
import type { Product, Shelf, Stock } from "./product";
import { isUsable, limitOf } from "./usable";

/** One use from the records. Without a line of stock it is taken from the usable one that runs out of date first. */
export type Consumption = {
  readonly productId: string;
  readonly stockId: string | null;
  readonly quantity: number;
  readonly on: CivilDate;
};

export type Counted = {
  readonly shelf: Shelf;
  /** Used beyond what the shelf held: the shelf was counted wrong, or something is missing. By product. */
  readonly beyond: ReadonlyMap<string, number>;
};

export function countDown(shelf: Shelf, uses: readonly Consumption[]): Counted {
  const products = new Map(shelf.products.map((product) => [product.id, product]));
  const left = new Map(shelf.stock.map((stock) => [stock.id, stock.quantity]));
  const beyond = new Map<string, number>();
  for (const use of uses) {
    let open = use.quantity;
    for (const stock of drawnFrom(shelf.stock, use, products.get(use.productId))) {
      const taken = Math.min(open, left.get(stock.id) ?? 0);
      left.set(stock.id, (left.get(stock.id) ?? 0) - taken);
      open -= taken;
    }
    if (open > 0) beyond.set(use.productId, (beyond.get(use.productId) ?? 0) + open);
  }
  return {
    shelf: { ...shelf, stock: shelf.stock.map((stock) => ({ ...stock, quantity: left.get(stock.id) ?? 0 })) },
    beyond,
  };
}

function drawnFrom(stock: readonly Stock[], use: Consumption, product: Product | undefined): readonly Stock[] {
  if (use.stockId !== null) return stock.filter((line) => line.id === use.stockId && line.productId === use.productId);
  if (!product) return [];
  return soonestFirst(
    stock.filter((line) => line.productId === use.productId && isUsable(line, product, use.on)),
    product,
  );
}

/** What runs out of date first is used first; what has no date comes last. */
export function soonestFirst(stock: readonly Stock[], product: Product): readonly Stock[] {
  const through = (line: Stock) => limitOf(line, product)?.through ?? { year: 9999, month: 12, day: 31 };
  return [...stock].sort((a, b) => compareDates(through(a), through(b)));
}

export type Need = { readonly productId: string; readonly quantity: number };

export type NeedRow = {
  readonly productId: string;
  readonly name: string;
  readonly needed: number;
  readonly usable: number;
  /** On the shelf but out of date. */
  readonly unusable: number;
  readonly short: number;
};

/** What a session will need against what may be used that day. A product the shelf does not know is all short. */
export function needsAgainstShelf(needs: readonly Need[], shelf: Shelf, on: CivilDate): readonly NeedRow[] {
  const wanted = new Map<string, number>();
  for (const need of needs) wanted.set(need.productId, (wanted.get(need.productId) ?? 0) + need.quantity);
  return [...wanted].map(([productId, needed]) => {
    const product = shelf.products.find((candidate) => candidate.id === productId);
    const { usable, unusable } = product ? onHand(shelf, product, on) : { usable: 0, unusable: 0 };
    return {
      productId,
      name: product?.name ?? productId,
      needed,
      usable,
      unusable,
      short: Math.max(0, needed - usable),
    };
  });
}

export type ReorderRow = {
  readonly productId: string;
  readonly name: string;
  readonly usable: number;
  readonly order: number;
  readonly unit: Product["unit"];
};

/** Products of which too little can be used after the needs ahead are met; ordered up to `orderTo` beyond those needs. */
export function reorderList(shelf: Shelf, on: CivilDate, ahead: readonly Need[] = []): readonly ReorderRow[] {
  return shelf.products.flatMap((product) => {
    const { usable } = onHand(shelf, product, on);
    const reserved = ahead
      .filter((need) => need.productId === product.id)
      .reduce((sum, need) => sum + need.quantity, 0);
    if (usable - reserved >= product.orderBelow) return [];
    return [
      {
        productId: product.id,
        name: product.name,
        usable,
        order: product.orderTo + reserved - usable,
        unit: product.unit,
      },
    ];
  });
}

function onHand(shelf: Shelf, product: Product, on: CivilDate): { usable: number; unusable: number } {
  const lines = shelf.stock.filter((line) => line.productId === product.id);
  const total = (list: readonly Stock[]) => list.reduce((sum, line) => sum + line.quantity, 0);
  const usable = total(lines.filter((line) => isUsable(line, product, on)));
  return { usable, unusable: total(lines) - usable };
}
