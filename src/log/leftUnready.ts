/**
 * What each station was left with: what its newest sealed session left unready, as its own record says. A thing that the
 * newest session's protocol does not know was not dealt with there: what an older one says of it stands. What was read is
 * folded into one row for each station, so that a start reads the sessions since, and not ten thousand.
 */
import type { AwayRow } from "./away";
import { asTrouble } from "./indexedDbStore";
import type { JournalTrouble } from "./journal";
import { type LeftRow, type LogDb, logDatabase, type Said, type StoredSession } from "./logDatabase";

/** Item ids by station; a station that no sealed session speaks of is missing. */
export type LeftUnready = Readonly<Record<string, readonly string[]>>;
export type ReadLeft = () => Promise<{ readonly ok: true; readonly left: LeftUnready } | JournalTrouble>;

/** @returns a function that reads it; one connection, kept. It never rejects. */
export function openLeftUnready(name?: string): ReadLeft {
  const { open } = logDatabase(name);
  return async () => {
    try {
      return { ok: true, left: await leftIn(await open()) };
    } catch (error) {
      return asTrouble(error);
    }
  };
}

async function leftIn(db: LogDb): Promise<LeftUnready> {
  const tx = reading(db);
  // Whatever ends it early is told by what was awaited then.
  tx.done.catch(() => undefined);
  const left: Record<string, readonly string[]> = {};
  for (const station of await stationsIn(tx)) {
    const before = (await tx.objectStore("left").get(station)) ?? nothingRead(station);
    const words = await wordsSince(tx, before);
    const now = withWords(before, words);
    if (now.said.length > 0) left[station] = now.said.filter(({ isUnready }) => isUnready).map(({ item }) => item);
    if (words.some(({ order, isOpen }) => order > before.upTo || !isOpen)) await tx.objectStore("left").put(now);
  }
  await tx.done;
  return left;
}

/** One session's word; `unready` is null where it has none: it goes on, or was closed without one. */
interface Word {
  readonly order: number;
  readonly isOpen: boolean;
  readonly items: readonly string[];
  readonly unready: readonly string[] | null;
}

const nothingRead = (station: string): LeftRow => ({ station, upTo: Number.NEGATIVE_INFINITY, open: [], said: [] });

/** Of each thing the newest word counts, in whichever order they were read. */
function withWords(before: LeftRow, words: readonly Word[]): LeftRow {
  return {
    station: before.station,
    upTo: words.reduce((upTo, { order }) => Math.max(upTo, order), before.upTo),
    open: words.filter(({ isOpen }) => isOpen).map(({ order }) => order),
    said: words.reduce<readonly Said[]>(withWord, before.said),
  };
}

function withWord(before: readonly Said[], { order, items, unready }: Word): readonly Said[] {
  if (!unready) return before;
  const isNewer = (item: string) => !before.some((said) => said.item === item && said.order > order);
  const newer = [...new Set([...unready, ...items])]
    .filter(isNewer)
    .map((item) => ({ item, order, isUnready: unready.includes(item) }));
  const others = before.filter(({ item }) => !newer.some((said) => said.item === item));
  return [...newer, ...others].sort((a, b) => b.order - a.order);
}

/** Both stores in one transaction: what is put away meanwhile is seen once. */
const reading = (db: LogDb) => db.transaction(["sessions", "away", "left"], "readwrite");
type Reading = ReturnType<typeof reading>;

/** From station to station by the index alone; no row is read. */
async function stationsIn(tx: Reading): Promise<ReadonlySet<string>> {
  const stations = new Set<string>();
  for (const store of ["sessions", "away"] as const) {
    let cursor = await tx.objectStore(store).index("station").openKeyCursor();
    while (cursor) {
      const [station] = cursor.key;
      stations.add(station);
      cursor = await cursor.continue([station, Number.POSITIVE_INFINITY]);
    }
  }
  return stations;
}

/** Those begun since, and those that still went on: they may be sealed by now. */
async function wordsSince(tx: Reading, { station, upTo, open }: LeftRow): Promise<readonly Word[]> {
  const since = IDBKeyRange.bound([station, upTo], [station, Number.POSITIVE_INFINITY], true);
  const words: Word[] = [];
  for (const asked of [since, ...open.map((order) => IDBKeyRange.only([station, order]))]) {
    words.push(...(await tx.objectStore("sessions").index("station").getAll(asked)).map(wordOf));
    words.push(...(await tx.objectStore("away").index("station").getAll(asked)).map(wordAway));
  }
  return words;
}

const wordOf = ({ order, state, header, closing }: StoredSession): Word => ({
  ...{ order, isOpen: state === "open" },
  items: header.input.protocol.items.map(({ id }) => id),
  unready: closing?.summary.closed?.unready ?? null,
});
const wordAway = ({ order, items, unready }: AwayRow): Word => ({ order, isOpen: false, items, unready });
