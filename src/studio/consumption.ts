/** What is left on the shelf: what was counted, less what the records of this device say was used since. */
import { dateAt } from "../due/zone";
import { type Consumption, countDown } from "../shelf/count";
import { usesOf } from "../shelf/fromSession";
import type { Shelf } from "../shelf/product";
import type { KeptRecord } from "./record";
import { assignedFor, type Studio, shelfOf } from "./studio";

export type Left = {
  readonly shelf: Shelf;
  /** Used beyond what the shelf held, by product. */
  readonly beyond: ReadonlyMap<string, number>;
  /** Sessions that took anything. */
  readonly sessions: number;
};

/** @param records in any order; a session draws only from lines that had been counted when it began. */
export function leftOnShelf(studio: Studio, records: readonly KeptRecord[]): Left {
  const beyond = new Map<string, number>();
  let shelf = shelfOf(studio);
  let sessions = 0;
  const inOrder = [...records].sort((a, b) => a.atMs - b.atMs);
  for (const record of inOrder) {
    const wasCounted = (stockId: string) => (studio.stock.get(stockId)?.countedAtMs ?? Infinity) <= record.atMs;
    const then = { ...shelf, stock: shelf.stock.filter(({ id }) => wasCounted(id)) };
    const known = new Set(then.stock.map(({ productId }) => productId));
    const uses = usesIn(record, studio, then).filter(({ productId }) => known.has(productId));
    if (uses.length === 0) continue;
    sessions += 1;
    const counted = countDown(then, uses);
    const left = new Map(counted.shelf.stock.map((line) => [line.id, line]));
    shelf = { ...shelf, stock: shelf.stock.map((line) => left.get(line.id) ?? line) };
    for (const [productId, over] of counted.beyond) beyond.set(productId, (beyond.get(productId) ?? 0) + over);
  }
  return { shelf, beyond, sessions };
}

/** The records needed: those begun since the first line was counted. Infinity where there is nothing to count. */
export const countedSinceMs = (studio: Studio): number =>
  [...studio.stock.values()].reduce((first, { countedAtMs }) => Math.min(first, countedAtMs), Infinity);

function usesIn(record: KeptRecord, studio: Studio, shelf: Shelf): readonly Consumption[] {
  const { protocol, lots, zone } = record.input;
  const given = lots.map(({ item, lot, expiry }) => ({
    ...{ type: "v1.LotGiven" as const, witnessedMs: 0, cause: 0 },
    ...{ item, lot, expiry },
  }));
  return usesOf(
    { protocol, facts: [...given, ...record.facts], on: dateAt(record.atMs, zone) },
    assignedFor(studio, protocol.id),
    shelf,
  );
}
