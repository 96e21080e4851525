/**
 * A sealed session put away: everything that was kept of it, sealed to the lock's public half. In the clear stays only what
 * the next session needs without the passphrase: the chain's head, the station, and what was left unready there.
 */
import { type Bytes, type OpeningPair, openSealed, sealTo } from "../locked/sealTo";
import type { FindingRow } from "./findingRow";
import type { StoredEntry, StoredPart, StoredSession } from "./logDatabase";

export interface AwayRow {
  /** Carries the moment it began, as every UUIDv7 does. */
  readonly session: string;
  readonly order: number;
  readonly station: string;
  readonly head: string;
  readonly count: number;
  /** Ids of the protocol's items, and those that were not ready at the close; null where it was closed without a word. */
  readonly items: readonly string[];
  readonly unready: readonly string[] | null;
  /** Which lock it is under, and HPKE's encapsulated key (RFC 9180). */
  readonly lock: string;
  readonly enc: Bytes;
  /** The row of the index. */
  readonly found: Bytes;
}

/** The rest of it, apart: ten thousand sessions are looked through without reading all that is in them. */
export interface AwayBody {
  readonly session: string;
  readonly row: Bytes;
  readonly rest: Bytes;
}

/** Everything of one session, as it lay in the stores. */
export interface Whole {
  readonly found: FindingRow;
  readonly row: StoredSession;
  readonly rest: { readonly entries: readonly StoredEntry[]; readonly parts: readonly StoredPart[] };
}
const places = ["found", "row", "rest"] as const;
type Place = (typeof places)[number];

const utf8 = new TextEncoder();
const purpose = utf8.encode("gloveside-records/1");
/** Sealed with it: the row in the clear cannot be altered, nor one session's contents be put under another. */
const about = ({ session, order, station, head, count, items, unready, lock }: Omit<AwayRow, "enc" | "found">) =>
  utf8.encode(JSON.stringify([session, order, station, head, count, items, unready, lock]));

export async function putAway(
  whole: Whole,
  lock: string,
  publicKey: Bytes,
): Promise<{ readonly away: AwayRow; readonly body: AwayBody }> {
  const { session, order, header, head, count, closing } = whole.row;
  const open = {
    ...{ session, order, station: header.input.station, head, count, lock },
    items: header.input.protocol.items.map(({ id }) => id),
    unready: closing?.summary.closed?.unready ?? null,
  };
  const texts = places.map((place) => utf8.encode(JSON.stringify(whole[place])));
  const { enc, bodies } = await sealTo(publicKey, purpose, about(open), texts);
  const [found = none, row = none, rest = none] = bodies;
  return { away: { ...open, enc, found }, body: { session, row, rest } };
}
const none = new Uint8Array(0);

async function takenOut<P extends Place>(away: AwayRow, pair: OpeningPair, place: P, body: Bytes): Promise<Whole[P]> {
  const at = places.indexOf(place);
  const { enc, found: _found, ...open } = away;
  const bodies = Array.from({ length: at + 1 }, () => body);
  return JSON.parse(new TextDecoder().decode(await openSealed(pair, purpose, about(open), { enc, bodies }, at)));
}

/** These reject where it does not open under this key, or was altered. What comes back was written by this device's store. */
export const foundOf = (away: AwayRow, pair: OpeningPair) => takenOut(away, pair, "found", away.found);
export const rowOf = (away: AwayRow, { row }: AwayBody, pair: OpeningPair) => takenOut(away, pair, "row", row);
export const wholeOf = async (away: AwayRow, body: AwayBody, pair: OpeningPair): Promise<Whole> => ({
  found: await foundOf(away, pair),
  row: await rowOf(away, body, pair),
  rest: await takenOut(away, pair, "rest", body.rest),
});
