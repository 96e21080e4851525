/** The journal of the command line. */
import { fileStore } from "./fileStore";
import type { Journal, Signer } from "./journal";
import { journalOver } from "./journalOver";

export const fileJournal = (folder: string, signer: Signer): Journal => journalOver(fileStore(folder), signer);
