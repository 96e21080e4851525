/** The log of this device: its key, its journal, and the pen that writes one session's facts with their stamp. */
import { currentRules } from "../export";
import {
  deviceSigner,
  indexedDbJournal,
  type Journal,
  type JournalTrouble,
  memoryJournal,
  newSigner,
  type OpenedRecord,
  openRecord,
  penOf,
  type Signer,
  uuidv7,
  type Writer,
} from "../log";
import type { Pen } from "../session/keeper";
import type { SessionInput } from "../session/sessionInput";

export interface Log {
  readonly journal: Journal;
  readonly signer: Signer;
}

export type OpenedLog = { ok: true; log: Log } | { ok: false; why: "noSigning" | "noStore" };

/** Without a key that signs and a store that keeps, nothing may begin. */
export async function deviceLog(): Promise<OpenedLog> {
  try {
    await newSigner();
  } catch {
    return { ok: false, why: "noSigning" };
  }
  try {
    const signer = await deviceSigner();
    const journal = indexedDbJournal(signer);
    const readable = await journal.unfinished();
    return readable.ok ? { ok: true, log: { journal, signer } } : { ok: false, why: "noStore" };
  } catch {
    return { ok: false, why: "noStore" };
  }
}

/** For practice: a key and a journal that end with the page. */
export async function practiceLog(): Promise<Log> {
  const signer = await newSigner();
  return { journal: memoryJournal(signer), signer };
}

/** One page life: its monotonic time cannot be compared with another's. */
const life = uuidv7();

/** The pen of this page: its clocks stamp what is kept. */
export const penHere = (writer: Writer): Pen =>
  penOf(writer, { life, monoMs: () => performance.now(), wallMs: () => Date.now() });

/**
 * By station: what its newest sealed session left unready, as its own record says; the next set-up begins with that. A
 * thing that the newest session's protocol does not know was not dealt with there: what an older one says of it stands.
 */
export async function leftUnready(journal: Journal): Promise<Readonly<Record<string, readonly string[]>>> {
  const listed = await journal.all();
  const left: Record<string, readonly string[]> = {};
  const known = new Map<string, Set<string>>();
  for (const { session, header } of listed.ok ? listed.sessions : []) {
    const { station, protocol } = header.input;
    const dealt = known.get(station) ?? new Set<string>();
    const fresh = protocol.items.filter((item) => !dealt.has(item.id));
    if (fresh.length === 0) continue;
    const read = await journal.read(session);
    const closed = read.ok ? read.kept.closing?.summary.closed : null;
    if (!closed) continue;
    left[station] = [...(left[station] ?? []), ...closed.unready.filter((id) => !dealt.has(id))];
    known.set(station, new Set([...dealt, ...fresh.map((item) => item.id)]));
  }
  return left;
}

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
