/** The log of this device: its key and its journal, and what its newest sessions left unready. */
import { deviceSigner, indexedDbJournal, type Journal, newSigner, type Signer } from "../log";

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
