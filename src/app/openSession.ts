/** What a session's log begins with: its header, the journal it goes into, and the pen that stamps its facts. */
import { currentRules } from "../export";
import {
  type JournalTrouble,
  memoryJournal,
  newSigner,
  type OpenedRecord,
  openRecord,
  penOf,
  uuidv7,
  type Writer,
} from "../log";
import type { Pen } from "../session/keeper";
import type { SessionInput } from "../session/sessionInput";
import type { Log } from "./wireLog";

/** For practice: a key and a journal that end with the page. */
export async function practiceLog(): Promise<Log> {
  const signer = await newSigner();
  return { journal: memoryJournal(signer), signer, vault: null, left: async () => ({ ok: true, left: {} }) };
}

/** One page life: its monotonic time cannot be compared with another's. */
const life = uuidv7();

/** The pen of this page: its clocks stamp what is kept. */
export const penHere = (writer: Writer): Pen =>
  penOf(writer, { life, monoMs: () => performance.now(), wallMs: () => Date.now() });

/** What a new session opens with: chained to the station's last one, so that a missing session shows. */
export async function openingFor(
  log: Log,
  input: SessionInput,
  phraseModel: string | null,
): Promise<{ ok: true; opening: OpenedRecord } | JournalTrouble> {
  const last = await log.journal.lastHead(input.station);
  if (!last.ok) return last;
  const opening = openRecord({
    session: uuidv7(),
    input,
    rules: currentRules,
    phraseModel,
    appVersion: import.meta.env.APP_VERSION,
    device: log.signer.publicKey,
    previousHead: last.head,
  });
  return { ok: true, opening };
}
