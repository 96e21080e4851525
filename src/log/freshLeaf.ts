/**
 * Turns a fresh leaf in the browser's store before anything of ours is opened. A kill or a power cut can tear the last
 * entry of the file that the browser writes to. Chromium then goes on writing behind the tear, and at the start after that
 * reads no further than the tear, or finds the store damaged and deletes all of it (DEVELOPERS.md). Taking a database away
 * makes it write down at once what it has read and begin a new file: what is kept from then on never stands behind a tear.
 */

export interface Leaf {
  /** The browser's own words, where it found the store damaged and began it anew; null where all is as it was left. */
  readonly lost: string | null;
}

/** Opened first in every life of the page: the browser tells of a loss to the first that asks, and to nobody else. */
export async function freshLeaf(name = "gloveside-leaf", store: IDBFactory = indexedDB): Promise<Leaf> {
  const lost = await opened(store, name);
  // The answer comes before all is written down; what a second turn asks for stands in line behind that.
  for (let turn = 0; turn < 2; turn++) {
    await ended(store.deleteDatabase(name));
    // Left lying for the next start: then the very first write is the one that turns the leaf.
    await opened(store, name);
  }
  return { lost };
}

async function opened(store: IDBFactory, name: string): Promise<string | null> {
  const opening = store.open(name, 1);
  let lost: string | null = null;
  opening.onupgradeneeded = (event) => {
    lost = lossIn(event);
    opening.result.createObjectStore("leaf");
  };
  const database = await ended(opening);
  database.close();
  return lost;
}

/** Chromium's own addition to the event; other browsers do not tell. */
function lossIn(event: IDBVersionChangeEvent & { dataLoss?: string; dataLossMessage?: string }): string | null {
  return event.dataLoss === undefined || event.dataLoss === "none" ? null : (event.dataLossMessage ?? event.dataLoss);
}

const ended = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
