/** All that the studio keeps, by kind and id, as read from the disk; rows that cannot be read are named, not dropped. */
import type { Assigned } from "../shelf/fromSession";
import type { Shelf } from "../shelf/product";
import { type Kind, kindNames, kinds, type Of } from "./kinds";

export type Studio = { readonly [K in Kind]: ReadonlyMap<string, Of<K>> };

/** A row as it lies in the store: not yet believed. */
export type StoredRow = { readonly kind: string; readonly id: string; readonly value: unknown };
export type RowName = { readonly kind: string; readonly id: string };

export const emptyStudio = (): Studio => Object.fromEntries(kindNames.map((kind) => [kind, new Map()])) as never;

export function readRows(rows: readonly StoredRow[]): { studio: Studio; unreadable: readonly RowName[] } {
  const studio = emptyStudio();
  const unreadable: RowName[] = [];
  for (const { kind, id, value } of rows) {
    const known = kindNames.find((name) => name === kind);
    const parsed = known && kinds[known].safeParse(value);
    if (known && parsed?.success) (studio[known] as Map<string, unknown>).set(id, parsed.data);
    else unreadable.push({ kind, id });
  }
  return { studio, unreadable };
}

/** Products and their stock. A line whose product is gone or cannot be read stays out. */
export function shelfOf(studio: Studio): Shelf {
  const lines = [...studio.stock.values()].map(({ line }) => line);
  return {
    products: [...studio.product.values()],
    stock: lines.filter(({ productId }) => studio.product.has(productId)),
  };
}

export const assignedFor = (studio: Studio, protocolId: string): Assigned =>
  studio.assigned.get(protocolId) ?? { items: {}, gloves: null };

/** "C7" after "C6": short enough to write on a pack and to say. Numbers of rows that cannot be read count too. */
export function nextNumber(prefix: string, ids: Iterable<string>): string {
  const taken = [...ids].flatMap((id) => {
    const number = id.startsWith(prefix) ? /^\d{1,9}$/.exec(id.slice(prefix.length)) : null;
    return number ? [Number(number[0])] : [];
  });
  return `${prefix}${taken.reduce((most, one) => Math.max(most, one), 0) + 1}`;
}
