/** The journal of this browser. The Node one stands in fileJournal, apart, so that no page ever loads a file system. */
import { type IndexedDbOptions, indexedDbStore } from "./indexedDbStore";
import type { Journal, Signer } from "./journal";
import { journalOver } from "./journalOver";

export const indexedDbJournal = (signer: Signer, options: IndexedDbOptions = {}): Journal =>
  journalOver(indexedDbStore({ locks: globalThis.navigator?.locks, ...options }), signer);
