/** What the screens may ask for of a session's personal part. `src/app` fills it in. */
import type { Note } from "../../export/notes";
import type { Client } from "../../log";

export interface BesideOf {
  readonly client: Client;
  readonly notes: readonly Note[];
}

export interface Beside {
  /** @returns null where the session cannot be read. */
  read(session: string): Promise<BesideOf | null>;
  /** Erases for good. @param places 0 for the client's reference, else the fact of a note. @returns null, or the code of why not. */
  erase(session: string, places: readonly number[]): Promise<string | null>;
}
