/** A question to the archive, and whether a row answers it. The index only narrows; this decides. Pure. */
import { type FindingRow, lotKey, nameKey } from "../log/findingRow";

export interface Query {
  /** From its beginning: "N-20" finds N-204. Empty fields ask for nothing. */
  readonly lot: string;
  /** Words anywhere in a product's name. */
  readonly product: string;
  /** "2026-11-25", the first and the last day, both included. */
  readonly from: string;
  readonly to: string;
  readonly deviation: string;
  readonly client: string;
}

export const everything: Query = { lot: "", product: "", from: "", to: "", deviation: "", client: "" };

/** As it is looked up: a mark that is all signs stands for itself. */
export const lotAsked = (text: string): string => lotKey(text) || text.trim();

export function answers(row: FindingRow, query: Query): boolean {
  const lot = lotAsked(query.lot);
  const product = nameKey(query.product);
  const client = nameKey(query.client);
  return (
    (lot === "" || row.lotKeys.some((key) => key.startsWith(lot))) &&
    (product === "" || row.productKeys.some((key) => key.includes(product))) &&
    (query.from === "" || row.day >= query.from) &&
    (query.to === "" || row.day <= query.to) &&
    (query.deviation === "" || row.deviations.includes(query.deviation)) &&
    (client === "" || row.clientKey.startsWith(client))
  );
}

/** Newest first; of one day by their number, which rises with time. */
export const inOrder = (rows: readonly FindingRow[]): FindingRow[] =>
  rows.toSorted((a, b) => (a.session < b.session ? 1 : a.session > b.session ? -1 : 0));
